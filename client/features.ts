/** The parts of the extension, in the order in which they are set up. A new part is one line here. */
import { drawingPanel } from './drawing-panel.ts';
import type { Feature } from './house.ts';
import { waking } from './waking.ts';

export const features: readonly Feature[] = [drawingPanel, waking];
