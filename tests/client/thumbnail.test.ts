/** A drawing as small as a line of text keeps its proportions and its content. */
import { expect, it } from 'vitest';
import { thumbnail } from '../../client/thumbnail.ts';
import { draftSheet, editing, newSheets } from '../../shared/index.ts';

const shown = (uri: string | null): string =>
  Buffer.from((uri ?? '').replace('data:image/svg+xml;base64,', ''), 'base64').toString();

it('is 18 px high, as wide as its proportions say, and the same otherwise', () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="-5 0 90 60"><title>N − P</title></svg>';
  expect(shown(thumbnail(svg))).toBe(
    '<svg width="27px" height="18px" xmlns="http://www.w3.org/2000/svg" viewBox="-5 0 90 60"><title>N − P</title></svg>',
  );
});

it('takes the drawings that the server makes', () => {
  const { setups } = draftSheet({ name: 'new.md', text: newSheets[0]?.text ?? '' });
  const svg = setups[0] === undefined ? undefined : editing.editorDrawing(setups[0], null)?.svg;
  expect(shown(thumbnail(svg ?? ''))).toMatch(/^<svg width="\d+px" height="18px" [^>]*viewBox=/);
});

it('is null for what has no view box', () => {
  expect(thumbnail('<svg width="90mm"></svg>')).toBeNull();
  expect(thumbnail('')).toBeNull();
});
