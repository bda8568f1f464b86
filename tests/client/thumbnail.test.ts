/** A drawing as small as a line of text shows the paper, in its proportions. */
import { expect, it } from 'vitest';
import { thumbnail } from '../../client/thumbnail.ts';
import { draftSheet, editing } from '../../shared/index.ts';

const shown = (uri: string | null): string =>
  Buffer.from((uri ?? '').replace('data:image/svg+xml;base64,', ''), 'base64').toString();

it('is 18 px high and shows the paper of what the server draws, whatever stands around it', () => {
  const text =
    '```electrodes\npaper 240 mm × 160 mm\nsupply cell 1.5 V\ndisc N diameter 9 mm at (60, 80) mm negative\n```\n';
  const { setups } = draftSheet({ name: 'small.md', text });
  const svg = setups[0] === undefined ? '' : (editing.editorDrawing(setups[0], null)?.svg ?? '');
  const small = shown(thumbnail(svg));
  const [, width = '', height = ''] = /viewBox="0 [\d.]+ ([\d.]+) ([\d.]+)"/.exec(small) ?? [];
  expect(small).toMatch(/^<svg [^>]* width="27px" height="18px"/);
  expect(Number(width) / Number(height)).toBeCloseTo(240 / 160, 1);
  expect(small).toContain('</style>');
  expect(small).toContain('<desc ');
});

it('is null for what shows no paper', () => {
  expect(thumbnail('<svg width="90mm"></svg>')).toBeNull();
  expect(thumbnail('')).toBeNull();
});
