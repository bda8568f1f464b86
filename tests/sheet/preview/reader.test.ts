/** What each reader gets in a preview: the same as in print, never hidden by style alone. */
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import type { ReadyPiece, Wish } from '../../../shared/sheet/preview/lookup.ts';
import { wishesOf } from '../../../shared/sheet/preview/wishes.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';
import { inputOf } from '../print/sheets.ts';
import { lookupIn, noting, piecesFor, preview, readyPreview, withoutDrawings, zoo } from './previews.ts';

const readers = ['pupils', 'teachers', 'technicians'] as const;
const textOf = (html: string): string =>
  withoutDrawings(html)
    .replace(/<[^>]*>/gu, ' ')
    .replace(/\s+/gu, ' ');

describe('readers', () => {
  it.each([
    ['The solved answer.', ['teachers']],
    ['Because of this', ['teachers']],
    ['Bench', ['technicians']],
    ['Teaching.', ['teachers']],
    ['Only pupils.', ['pupils']],
    ['there', ['pupils', 'teachers']],
    ['For some', ['pupils', 'teachers']],
    ['Broken.', ['teachers']],
  ] as const)('%s', (words, expected) => {
    expect(readers.filter((reader) => textOf(readyPreview(zoo, reader)).includes(words))).toEqual(expected);
  });

  it('pupils get room for answers and find hints on the last page', () => {
    const html = readyPreview(zoo, 'pupils');
    expect(html).toContain('<div class="lines"><div></div><div></div><div></div></div>');
    expect(html).toContain('style="height:30mm"');
    expect(html).toContain('Hint 1 is on the last page.');
    expect(html.trimEnd()).toMatch(
      /<section class="papervolt-hints">[\s\S]*Look <strong>there<\/strong>[\s\S]*<\/section>$/u,
    );
  });

  it('who sees it is said at its head, and who gets no print of it', () => {
    expect(preview(zoo, 'pupils')).toMatch(/^<p class="papervolt-reader">As pupils see it\.<\/p>/u);
    const one = zoo.replace('title: Zoo', 'audience: teachers');
    expect(preview(one, 'pupils')).toContain('The sheet is for teachers alone: pupils get no print.');
    expect(preview(one, 'teachers')).not.toContain('alone:');
  });

  it('marks, points, HTML as text, a new page', () => {
    const html = readyPreview(zoo, 'teachers');
    expect(html).toContain('\u00a0<span class="papervolt-mark">[2]</span></p>');
    expect(html).toMatch(/Because of this\s+<span class="papervolt-mark">\(1\)<\/span><br>\nand/u);
    expect(html).toContain('Raw &lt;b&gt;HTML&lt;/b&gt; and');
    expect(html).toContain('<p class="papervolt-html">&lt;div&gt;alone&lt;/div&gt;</p>');
    expect(html).toContain('<div class="papervolt-new-page">new page</div>');
    expect(html).not.toContain('title: Zoo');
  });

  it('teachers see values, pupils blanks but for what they are told', () => {
    expect(textOf(readyPreview(zoo, 'teachers'))).toContain('a value 1.20 V , a blank , told 0.90 V .');
    expect(textOf(readyPreview(zoo, 'pupils'))).toContain('a value V , a blank , told 0.90 V .');
  });
});

describe('the answer rule', () => {
  const asking = zoo.replaceAll('!{', '?{');
  const everything = (slope: number): ReadonlyMap<string, ReadyPiece> => {
    const input = inputOf(asking, { slope_V_per_mm: slope });
    return new Map(readers.flatMap((reader) => [...piecesFor(input, reader)]));
  };

  it('pupils’ bytes do not depend on the solution, with all pieces of all readers at hand', () => {
    const seen = (slope: number) => preview(asking, 'pupils', lookupIn(everything(slope)));
    expect(seen(0.01).length).toBeGreaterThan(20_000);
    expect(seen(0.0137)).toBe(seen(0.01));
    const teachers = (slope: number) => preview(asking, 'teachers', lookupIn(everything(slope)));
    expect(teachers(0.0137)).not.toBe(teachers(0.01));
  });

  it('what was shown to teachers last never stands in for pupils', () => {
    const places = (reader: 'pupils' | 'teachers') =>
      new Set(wishesOf(inputOf(asking), reader).all.map(({ place }) => place));
    const shared = [...places('pupils')].filter((place) => places('teachers').has(place));
    expect(places('pupils').size).toBeGreaterThan(2);
    expect(shared).toEqual([]);
  });

  it('what is told reaches pupils', () => {
    expect(readyPreview(zoo, 'pupils', { slope_V_per_mm: 0.0137 })).not.toBe(readyPreview(zoo, 'pupils'));
  });

  it('no name of a setup reaches pupils', () => {
    const text = zoo.replaceAll('bars', 'hidden-lift').replaceAll('small', 'second-one');
    for (const html of [readyPreview(text, 'pupils'), preview(text, 'pupils')])
      expect(html).not.toMatch(/hidden-lift|second-one/u);
  });

  it('by types: what runs in the editor’s preview reaches no solution', () => {
    const shared = join(import.meta.dirname, '../../../shared');
    const reached = (from: string, seen = new Set<string>()): Set<string> => {
      if (seen.has(from)) return seen;
      seen.add(from);
      for (const [, path = ''] of readFileSync(from, 'utf8').matchAll(/from\s+'(\.[^']*)'/g))
        reached(join(dirname(from), path), seen);
      return seen;
    };
    const graph = [...reached(join(shared, 'sheet/preview/rules.ts'))].map((path) => relative(shared, path));
    expect(graph.length).toBeGreaterThan(60);
    const solved =
      /^setup\/readings\.ts$|^setup\/solve|^field\/(solve|sample|mesh)\/|^drawing\/solved|solved-|told\.ts$/;
    expect(graph.filter((path) => solved.test(path))).toEqual([]);
  });
});

describe('wishes', () => {
  it.each(readers)(
    '%s wait for nothing that is not wished for, and for nothing once all is ready',
    (reader) => {
      const input = inputOf(zoo);
      const asked: Wish[] = [];
      const html = preview(zoo, reader, noting(lookupIn(piecesFor(input, reader)), asked));
      expect(html).not.toContain('papervolt-waiting');
      const wished = new Set(wishesOf(input, reader).all.map(({ key }) => key));
      expect(new Set(asked.map(({ key }) => key))).toEqual(wished);
      expect(preview(zoo, reader).includes('papervolt-waiting')).toBe(true);
    },
  );

  it('keys are by content: prose and captions change none, a bar that is moved changes those of its setup', () => {
    const keys = (text: string) => {
      const sheet = readSheet({ name: 'other.md', text });
      const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
      return wishesOf({ ...inputOf(text), sheet, setups }, 'teachers').all.map(({ key }) => key);
    };
    const before = keys(zoo);
    expect(keys(zoo.replace('# A zoo', 'More prose.\n\n# A zoo').replace('"Left"', '"West"'))).toEqual(
      before,
    );
    const moved = keys(zoo.replace('at (60, 80) mm', 'at (61, 80) mm'));
    expect(moved.filter((key) => before.includes(key))).toEqual([]);
    const other = keys(zoo.replace('200 mm × 180 mm', '200 mm × 170 mm'));
    expect(other.filter((key) => !before.includes(key)).length).toBeGreaterThanOrEqual(1);
    expect(other.filter((key) => before.includes(key)).length).toBeGreaterThan(5);
  });
});
