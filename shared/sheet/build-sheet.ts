/** Puts a sheet together from what the rules have read. */
import type { Token } from 'markdown-it';
import type { Finding } from '../findings/finding.ts';
import { readFrontMatter } from './front-matter.ts';
import type { Reading } from './markdown/reading.ts';
import type { Sheet } from './sheet.ts';

export function buildSheet(reading: Reading, tokens: readonly Token[]): Sheet {
  const front = readFrontMatter(reading.source.text, reading.front);
  return {
    source: reading.source,
    tokens,
    front: front.front,
    blocks: reading.blocks,
    passages: reading.passages,
    inserts: reading.inserts,
    totals: reading.totals,
    allowances: reading.allowances,
    running: reading.running,
    findings: [...front.findings, ...reading.findings].sort(byPlace),
  };
}

function byPlace(a: Finding, b: Finding): number {
  return a.span.from - b.span.from || a.span.to - b.span.to;
}
