/** Reads what follows the word `electrodes` on the opening line of a block: a name, and the setup that it varies. */
import { finding } from '../findings/catalogue.ts';
import type { Finding } from '../findings/finding.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import { LineReader } from './line-reader.ts';
import { end } from './parts.ts';
import type { BlockHead, Name } from './tree.ts';
import { name } from './values.ts';
import { reservedSetupNames } from './words.ts';

export interface HeadReading {
  readonly head: BlockHead;
  readonly findings: readonly Finding[];
}

/** `NAME`, `NAME like OTHER`, `like OTHER`, or nothing. */
export function readHead(line: ExcerptLine): HeadReading {
  const reader = new LineReader(line, { electrodes: new Set(), names: new Set() });
  const given = reader.atEnd || reader.peek().text === 'like' ? null : name(reader, 'the setup');
  const like = reader.takeWord('like') ? name(reader, 'the setup that this one is like') : null;
  if (!reader.failed) end(reader);
  if (given !== null) checkName(reader, given);
  return { head: { name: given, like, span: reader.whole }, findings: reader.findings };
}

function checkName(reader: LineReader, given: Name): void {
  if (!reservedSetupNames.includes(given.text)) return;
  const message = `A setup cannot be called \`${given.text}\`: it is the name of a block without one.`;
  reader.findings.push(finding('name-reserved', { span: given.span, message }));
}
