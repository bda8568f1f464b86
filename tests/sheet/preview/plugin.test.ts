/** The plugin in the editor's older markdown-it and in ours: other texts keep every byte, sheets get our parts. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../shared/sheet/markdown/tokens.ts';
import { renderSheet } from '../../../shared/sheet/preview/render-sheet.ts';
import { previewRules } from '../../../shared/sheet/preview/rules.ts';
import { inputOf } from '../print/sheets.ts';
import {
  figuresIn,
  lookupIn,
  noteLines,
  nothingReady,
  parsers,
  piecesFor,
  preview,
  withoutDrawings,
  zoo,
} from './previews.ts';

const source = { reader: () => 'teachers' as const, begin: () => nothingReady };

const fragments = [
  '# Heading',
  '---\ntitle: x\n---',
  'A value ?{M} and !{M}.',
  '::: answer',
  ':::',
  '<div>html</div>',
  '<!-- papervolt: new page -->',
  'Question? [2]',
  '- item (1)',
  '  ::: hint',
  '> quote',
  '| a | b |\n| --- | --- |\n| ?{M} | [1] |',
  '```js\n::: teachers\n```',
  '```electrode\npaper\n```',
  '    ```electrodes\n    paper\n    ```',
  '![picture ?{M}](x.png "title")',
  '[link]: http://example.org',
  '\ufeffbom',
  '\0',
  '',
];
const documents = fc.array(fc.oneof(fc.constantFrom(...fragments), fc.string({ maxLength: 30 })), {
  maxLength: 12,
});

/** Indentation can make a block of what was none. */
const isBlockWord = (info: string): boolean => /^\s*electrodes(?!\S)/u.test(info);

describe.each(Object.entries(parsers))('%s', (_name, make) => {
  it('a text without a block is rendered as if the plugin were not there', () => {
    const plugged = make();
    previewRules(plugged, source);
    const plain = make();
    fc.assert(
      fc.property(documents, fc.constantFrom('\n', '\n\n', '\r\n'), (lines, between) => {
        const text = lines.join(between);
        fc.pre(!plain.parse(text, {}).some(({ type, info }) => type === 'fence' && isBlockWord(info)));
        expect(plugged.render(text)).toBe(plain.render(text));
      }),
      { numRuns: 500 },
    );
  });

  it('the fragments of that test are of interest once there is a block', () => {
    const plugged = make();
    previewRules(plugged, source);
    const text = `${fragments.join('\n\n')}\n\n\`\`\`electrodes\npaper\n\`\`\`\n`;
    expect(plugged.render(text)).not.toBe(make().render(text));
  });

  it('tokens are rendered twice to the same bytes and are not changed', () => {
    const md = make();
    previewRules(md, { reader: () => 'pupils', begin: () => nothingReady });
    noteLines(md);
    const tokens = md.parse(zoo, {});
    const before = JSON.stringify(tokens);
    const first = md.renderer.render(tokens, md.options, {});
    expect(JSON.stringify(tokens)).toBe(before);
    expect(md.renderer.render(tokens, md.options, {})).toBe(first);
    expect(first).toContain('papervolt-passage');
  });

  it('tokens can be copied to another thread and written as JSON', () => {
    const md = make();
    previewRules(md, source);
    const tokens = md.parse(zoo, {});
    expect(JSON.stringify(tokens).length).toBeLessThan(40 * zoo.length);
    expect(() => structuredClone(tokens.map(({ meta, type, map }) => ({ meta, type, map })))).not.toThrow();
    expect(sheetOf(JSON.parse(JSON.stringify(tokens)))).toBe(null);
    expect(sheetOf(tokens)).not.toBe(null);
  });

  it('our outer elements carry the line for scrolling together behind their own class', () => {
    const md = make();
    previewRules(md, source);
    noteLines(md);
    const html = withoutDrawings(md.render(zoo));
    const lineOf = (text: string) => zoo.split('\n').indexOf(text);
    expect(html).toContain(
      `<figure class="papervolt-figure code-line" id="papervolt-block-1" data-line="${lineOf('```electrodes bars')}">`,
    );
    expect(html).toContain(
      `<section class="papervolt-passage papervolt-teachers code-line" data-line="${lineOf('::: teachers')}">`,
    );
    expect(html).toContain(
      `<div class="papervolt-figures code-line" data-line="${lineOf('?{readings bars.A "Readings"}')}">`,
    );
    expect(html).toContain('<p class="papervolt-html code-line" data-line=');
    expect(html).toContain('<div class="papervolt-new-page code-line" data-line=');
  });

  it('says to the source which text is rendered', () => {
    const begun: (string | null)[] = [];
    const md = make();
    previewRules(md, {
      ...source,
      begin(document) {
        begun.push(document);
        return nothingReady;
      },
    });
    const tokens = md.parse(zoo, {});
    md.renderer.render(tokens, md.options, { currentDocument: new URL('file:///a.md') });
    md.renderer.render(tokens, md.options, { currentDocument: undefined });
    md.render('no sheet', { currentDocument: new URL('file:///b.md') });
    expect(begun).toEqual(['file:///a.md', null]);
  });

  it('other Markdown in a sheet stays as the preview renders it', () => {
    const html = preview(zoo, 'teachers', nothingReady, () => {
      const md = make();
      md.renderer.rules.fence = () => '<pre>by another</pre>\n';
      return md;
    });
    expect(html).toContain('<pre>by another</pre>');
    expect(html).toContain('<th style="text-align:right"><em>V</em> / V</th>');
  });
});

it.each(['teachers', 'pupils', 'technicians'] as const)('both give the same HTML for %s', (audience) => {
  const lookup = lookupIn(piecesFor(inputOf(zoo), audience));
  const [old, ours] = Object.values(parsers).map((make) => preview(zoo, audience, lookup, make));
  expect(old).toBe(ours);
  expect(renderSheet({ name: 'sheet.md', text: zoo }, audience, lookup)).toBe(ours);
  expect(figuresIn(ours ?? '').length).toBe({ teachers: 4, pupils: 3, technicians: 4 }[audience]);
});
