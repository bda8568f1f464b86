/** The page of findings is written from the catalogue and its explanations and holds every code. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import MarkdownIt from 'markdown-it';
import { describe, expect, it, test } from 'vitest';
import { catalogue } from '../../shared/findings/catalogue.ts';
import type { CatalogueEntry } from '../../shared/findings/entry.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const page = readFileSync(join(root, 'docs/findings.md'), 'utf8');
const entries: readonly (readonly [string, CatalogueEntry])[] = Object.entries(catalogue);

describe('docs/findings.md', () => {
  it('is what build/findings-page.mjs writes', () => {
    const written = execFileSync(process.execPath, [join(root, 'build/findings-page.mjs'), '--print'], {
      encoding: 'utf8',
    });
    expect(page).toBe(written);
  });

  it('has one heading a code, whatever stands in the excerpts', () => {
    const tokens = new MarkdownIt().parse(page, {});
    const headings = tokens.flatMap(({ type, content }, i) =>
      type === 'inline' && tokens[i - 1]?.type === 'heading_open' ? [content] : [],
    );
    expect(new Set(headings).size).toBe(headings.length);
    expect(headings.filter((heading) => /^[a-z]/.test(heading))).toHaveLength(entries.length);
    expect(headings).toEqual(expect.arrayContaining(entries.map(([code]) => code)));
  });

  test.each(entries)('tells %s under a heading that a link can lead to', (code, { severity, meaning }) => {
    expect(page).toContain(`\n### ${code}\n\n\`${severity}\`: ${meaning}`);
  });
});

describe('catalogue', () => {
  test.each(entries)(
    '%s is a code of lower-case words with a meaning in one sentence',
    (code, { meaning }) => {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(meaning).toMatch(/^[A-Z].*\.$/s);
      expect(meaning).not.toMatch(/\b(safe|approved|compliant|harmless)\b/i);
    },
  );
});
