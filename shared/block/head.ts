/** Reads what follows the word `electrodes` on the opening line of a block: a name, and the setup that it varies. */
import { type Finding, finding } from '../findings/finding.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import { LineReader } from './line-reader.ts';
import { nearest } from './nearest.ts';
import { unexpected } from './parts.ts';
import { isName } from './tokens.ts';
import type { BlockHead, Name } from './tree.ts';
import { name, rewrite } from './values.ts';
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
  if (!reader.failed && !reader.atEnd) tooManyWords(reader, given, like);
  if (given !== null) checkName(reader, given);
  return { head: { name: given, like, span: reader.whole }, findings: reader.findings };
}

/** `near bars` as a name, or a word where `like` belongs. */
function tooManyWords(reader: LineReader, given: Name | null, like: Name | null): void {
  const name = like ?? given;
  const rest = reader.text.slice(reader.offset).trim().split(/\s+/u);
  const near = like === null && nearest(reader.peek().text, ['like']).length > 0;
  if (name === null || near || !rest.every(isName)) {
    unexpected(reader, like === null ? ['like'] : []);
    return;
  }
  const joined = [name.text, ...rest].join('-');
  const at = { from: name.span.from - reader.line.at, to: reader.text.length };
  reader.report('name-form', {
    span: reader.span(at.from, at.to),
    message: `A name has no spaces: \`${joined}\`?`,
    hints: like === null ? ['A setup that varies another one is written `NAME like OTHER`.'] : [],
    fixes: [rewrite(reader, at, joined, joined)],
  });
}

function checkName(reader: LineReader, given: Name): void {
  if (!reservedSetupNames.includes(given.text)) return;
  const message = `A setup cannot be called \`${given.text}\`: it is the name of a block without one.`;
  // Without the word, and the space before it, it has that name all the same.
  const edits = [{ span: { from: given.span.from - 1, to: given.span.to }, text: '' }];
  const fixes = given.text === 'setup' ? [{ title: 'Leave the name out', edits, certain: true }] : [];
  reader.findings.push(finding('name-reserved', { span: given.span, message, fixes }));
}
