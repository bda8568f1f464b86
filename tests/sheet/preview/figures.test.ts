/** Figures of a preview: their frames keep their size and their bytes, whatever is shown in them. */
import { describe, expect, it } from 'vitest';
import type { Lookup } from '../../../shared/sheet/preview/lookup.ts';
import { inputOf } from '../print/sheets.ts';
import { figuresIn, framesIn, lookupIn, piecesFor, preview, readyPreview, zoo } from './previews.ts';

const unsolved = { ...inputOf(zoo), solutions: new Map() };
const trouble = new Map([[0, 'N and P touch: a `short` circuit.']]);

describe('size', () => {
  const frames = framesIn(preview(zoo, 'teachers')).map(sizeOf);

  it('is there before anything is drawn', () => {
    expect(frames).toHaveLength(4);
    expect(new Set(frames).size).toBeGreaterThan(1);
  });

  it.each([
    ['solved', readyPreview(zoo, 'teachers')],
    ['with another solution', readyPreview(zoo, 'teachers', { slope_V_per_mm: 0.002 })],
    ['not solved', preview(zoo, 'teachers', lookupIn(piecesFor(unsolved, 'teachers', trouble)))],
  ])('is the same %s', (_name, html) => {
    expect(framesIn(html).map(sizeOf)).toEqual(frames);
  });

  it('follows the paper alone', () => {
    const other = zoo
      .replace('bar     P  10 mm × 120 mm', 'bar     P  20 mm × 100 mm')
      .replace('cell 1.5 V', 'cell 9 V');
    expect(framesIn(preview(other, 'teachers')).map(sizeOf)).toEqual(frames);
    const wider = zoo.replace('240 mm × 160 mm', '250 mm × 160 mm');
    expect(framesIn(preview(wider, 'teachers')).map(sizeOf)).not.toEqual(frames);
  });

  it('is at most 140 mm by 115 mm, and figures of one paragraph share that', () => {
    for (const paper of [
      '20 mm × 20 mm',
      '240 mm × 160 mm',
      '160 mm × 240 mm',
      '900 mm × 90 mm',
      '5 m × 4 m',
    ]) {
      const text = `\`\`\`electrodes a\npaper ${paper}, 5 kΩ per square\n\`\`\`\n\n?{drawing a} ?{drawing a, half size}\n`;
      const [block, left, right] = framesIn(preview(text, 'teachers')).map(measuresOf);
      for (const { width, height } of [block, left, right].flatMap((frame) => frame ?? [])) {
        expect(width).toBeGreaterThan(5);
        expect(width).toBeLessThanOrEqual(140);
        expect(height).toBeLessThanOrEqual(115.01);
      }
      expect(left).toEqual(right);
    }
  });

  it('a drawing that reaches beyond its frame is scaled down in it', () => {
    const html = readyPreview(zoo, 'teachers');
    const block = framesIn(html).at(2) ?? '';
    const { width, height } = measuresOf(block);
    const [, , w = 0, h = 0] = /viewBox="([^"]*)"/u.exec(block)?.[1]?.split(' ').map(Number) ?? [];
    expect(w).toBeGreaterThan(width + 1);
    expect(w / h).toBeCloseTo(width / height, 2);
  });
});

describe('bytes', () => {
  it('prose, values and headings change no figure', () => {
    const edited = zoo
      .replace('# A zoo of parts', '# A zoo of all parts\n\nNew prose with ?{bars.K}.\n\n## More')
      .replace('Teaching.', 'Teaching, and more.');
    for (const reader of ['teachers', 'pupils'] as const) {
      const before = figuresIn(readyPreview(zoo, reader));
      expect(before.length).toBeGreaterThan(2);
      expect(figuresIn(readyPreview(edited, reader))).toEqual(before);
    }
  });

  it('ids are unique', () => {
    for (const html of [preview(zoo, 'teachers'), readyPreview(zoo, 'teachers')]) {
      const ids = [...html.matchAll(/ id="([^"]*)"/gu)].map(([, id]) => id);
      expect(ids).toContain('papervolt-block-1');
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it('colours are variables with those of paper behind them', () => {
    const html = readyPreview(zoo, 'teachers');
    expect(html).toContain('stroke="var(--papervolt-field, #005A8C)"');
    expect(html).toContain('fill="var(--papervolt-ground, #FFFFFF)"');
    expect(html).not.toMatch(/(?:fill|stroke)="#/u);
  });
});

describe('what stands for what is not ready', () => {
  const ready = piecesFor(inputOf(zoo), 'teachers');
  const lastGood: Lookup['lastGood'] = () => '<svg width="1mm" height="1mm" viewBox="0 0 1 1"></svg>';
  const block = (html: string): string =>
    figuresIn(html).find((each) => each.includes('id="papervolt-block-1"')) ?? '';

  it('a sketch', () => {
    const figure = block(preview(zoo, 'teachers'));
    expect(figure).toContain('<div class="papervolt-drawing papervolt-waiting"><svg');
    expect(figure).toContain('Set-up on conducting paper: N and P');
    expect(figure.length).toBeLessThan(2500);
  });

  it('what was ready last, until the new one comes', () => {
    const figure = block(preview(zoo, 'teachers', { piece: () => null, lastGood }));
    expect(figure).toContain('<div class="papervolt-drawing papervolt-waiting"><svg width="1mm"');
  });

  it('what was ready last, dimmed, with the message in the line of the caption', () => {
    const pieces = piecesFor(unsolved, 'teachers', trouble);
    const html = preview(zoo, 'teachers', { piece: ({ key }) => pieces.get(key) ?? null, lastGood });
    expect(block(html)).toContain('<div class="papervolt-drawing papervolt-stale"><svg width="1mm"');
    expect(block(html)).toContain(
      '<figcaption class="papervolt-message" title="N and P touch: a `short` circuit.">N and P touch: a <code>short</code> circuit.</figcaption>',
    );
    expect(html).toContain('<div class="papervolt-table papervolt-stale" title="N and P touch');
    expect(html).toContain('<span class="papervolt-value papervolt-stale" title="N and P touch');
  });

  it('without one the outlines, and the message', () => {
    const figure = block(preview(zoo, 'teachers', lookupIn(piecesFor(unsolved, 'teachers', trouble))));
    expect(figure).toContain('<div class="papervolt-drawing"><svg');
    expect(figure).toContain('papervolt-message');
  });

  it('a paper line that cannot be read leaves the last drawing, of whatever size', () => {
    const broken = zoo.replace('paper   240 mm × 160 mm, 5 kΩ per square', 'paper   240 mm ×');
    const input = inputOf(broken);
    const pieces = piecesFor({ ...input, solutions: new Map() }, 'teachers', trouble);
    const sizes: (string | null)[] = [];
    const html = preview(broken, 'teachers', {
      piece: ({ key }) => pieces.get(key) ?? null,
      lastGood(wish) {
        sizes.push(wish.size);
        return lastGood(wish);
      },
    });
    expect(sizes).toContain(null);
    expect(block(html)).toContain('papervolt-stale');
  });

  it('ready pieces are put in as they are', () => {
    const html = preview(zoo, 'teachers', lookupIn(ready));
    for (const { html: piece } of ready.values()) expect(html).toContain(piece);
  });
});

function sizeOf(frame: string): string {
  return /width="[^"]*" height="[^"]*"/u.exec(frame)?.[0] ?? '';
}

function measuresOf(frame: string): { readonly width: number; readonly height: number } {
  const [, width = 0, height = 0] = /width="([\d.]+)mm" height="([\d.]+)mm"/u.exec(frame)?.map(Number) ?? [];
  return { width, height };
}
