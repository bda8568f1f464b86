/** The parts of the extension, in the order in which they are set up. A new part is one line here. */
import { commands } from './commands/index.ts';
import { drawingPanel } from './drawing-panel.ts';
import { files } from './files.ts';
import { firstBlock } from './first-block.ts';
import type { Feature } from './house.ts';
import { tellSettings } from './live-settings.ts';
import { status } from './status.ts';
import { thumbnails } from './thumbnails.ts';
import { waking } from './waking.ts';

/** `waking` is the last: what it starts is heard by the others. */
export const features: readonly Feature[] = [
  commands,
  drawingPanel,
  files,
  firstBlock,
  status,
  tellSettings,
  thumbnails,
  waking,
];
