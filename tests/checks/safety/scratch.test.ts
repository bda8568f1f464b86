import { readdirSync, readFileSync } from 'node:fs';
import { it } from 'vitest';
import { lineIndex } from '../../../shared/text/source.ts';
import { findingsOf } from './safety.ts';

it('x', () => {
  const d = 'tests/checks/corpus/clean/';
  const out: string[] = [];
  for (const f of readdirSync(d)) {
    const t = readFileSync(d + f, 'utf8');
    for (const one of findingsOf(t, { today: '2026-10-01' }))
      out.push(
        `${f}:${lineIndex(t).placeOf(one.span.from).line + 1} ${one.severity} ${one.code} ${one.message} | ${one.related.map((r) => t.slice(r.span.from, r.span.to).slice(0, 80)).join(' / ')}`,
      );
  }
  console.log(out.join('\n'));
});
