/** What page and extension send each other is taken only in its form, and the page is made under a strict policy. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { englishWords, panelHtml } from '../../../client/panel/html.ts';
import { answers, lookoutForm, toExtension, toPage } from '../../../client/panel/protocol.ts';

const drawing = {
  version: 3,
  block: 0,
  name: 'bars',
  svg: '<svg/>',
  title: 'Set-up',
  description: 'Two bars',
  frame: { left: 0, top: 100, scale: 0.5 },
  paper: { width_mm: 240, height_mm: 160 },
  handles: [
    {
      id: 'probe M',
      kind: 'probe',
      label: 'probe M',
      x_mm: 10,
      y_mm: 20,
      path: null,
      place: { line: 3, character: 0 },
    },
  ],
  stale: false,
  message: null,
};

describe('forms', () => {
  test('a message of the form comes through as it is', () => {
    const message = { kind: 'drawing', lookout: { uri: 'file:///a.md', line: 4 }, drawing };
    expect(toPage.read(message)).toEqual({ value: message });
    expect(answers.panel.read(drawing)).toEqual({ value: drawing });
    expect(answers.panel.read(null)).toEqual({ value: null });
    const move = { kind: 'move', ask: 1, block: 0, handle: 'probe M', by_mm: [1, -2] };
    expect(toExtension.read(move)).toEqual({ value: move });
  });
  test('what is missing, of another kind or not finite is refused', () => {
    expect(toExtension.read({ kind: 'slip', ask: 1, block: 0, x_mm: Number.NaN, y_mm: 0 })).toBeNull();
    expect(toExtension.read({ kind: 'move', ask: 1, block: 0, handle: 'x', by_mm: [1] })).toBeNull();
    expect(toExtension.read({ kind: 'run', command: 'x' })).toBeNull();
    expect(answers.panel.read({ ...drawing, handles: [{ id: 'x' }] })).toBeNull();
    expect(
      answers.moved.read({ edits: [{ newText: 'x' }], version: 1, drawing: null, handle: '', said: '' }),
    ).toBeNull();
    expect(lookoutForm.read({ uri: 7, line: 0 })).toBeNull();
  });
  test('keys that nobody knows are left out', () => {
    expect(toExtension.read({ kind: 'ready', more: 1 })).toEqual({ value: { kind: 'ready' } });
  });
  test('whatever comes, it is read or refused', () => {
    fc.assert(
      fc.property(fc.anything(), (data) => {
        for (const form of [toPage, toExtension, answers.panel, answers.moved]) form.read(data);
      }),
    );
  });
});

describe('the page', () => {
  const html = panelHtml({
    style: 'https://files.test/panel.css?a&b',
    script: 'https://files.test/panel.js',
    source: 'https://files.test',
    nonce: 'f00',
    words: { ...englishWords, paper: '<Paper & "ink">' },
  });
  test('may load its style sheet and its program and nothing else', () => {
    expect(html).toContain(
      'content="default-src &#39;none&#39;; style-src https://files.test; script-src &#39;nonce-f00&#39;"',
    );
    expect(html.match(/<script/gu)).toEqual(['<script']);
    expect(html).not.toMatch(/ style=| on\w+=/u);
  });
  test('escapes every word', () => {
    expect(html).toContain('aria-label="&lt;Paper &amp; &quot;ink&quot;&gt;"');
    expect(html).toContain('href="https://files.test/panel.css?a&amp;b"');
  });
});
