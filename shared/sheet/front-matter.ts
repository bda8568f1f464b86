/** Reads the front matter of a sheet: YAML between two lines of hyphens. Every value knows its place; what cannot be taken is left out. */
import { isScalar, isSeq, type Pair } from 'yaml';
import { nearest } from '../block/nearest.ts';
import type { Audience } from '../block/tree.ts';
import { type Finding, type Fix, finding } from '../findings/finding.ts';
import type { SheetCode } from '../findings/sheet-codes.ts';
import { type Span, span } from '../text/span.ts';
import type { FrontMatter } from './sheet.ts';
import { readYamlMap } from './yaml-map.ts';

export interface FrontReading {
  readonly front: FrontMatter;
  readonly findings: readonly Finding[];
}

/** `where` are the lines between the rules and the whole; null for a sheet without front matter. */
export function readFrontMatter(
  text: string,
  where: { readonly inside: Span; readonly whole: Span } | null,
): FrontReading {
  if (where === null) return { front: plainFront, findings: [] };
  const reader = new FrontReader(where.inside.from);
  const front: Draft = { ...plainFront, span: where.whole };
  const yaml = readYamlMap(text, where.inside);
  if (yaml === null) {
    reader.report('front-yaml', where.whole, 'This front matter is too large to be one.');
    return { front, findings: reader.findings };
  }
  for (const { span, message } of yaml.troubles) reader.report('front-yaml', span, message);
  const sound = yaml.troubles.length === 0;
  for (const pair of yaml.map?.items ?? []) {
    // What is not YAML may have made a list of a title with a colon: that is said already.
    if (sound || isScalar(pair.value)) readPair(reader, front, pair);
  }
  if (yaml.otherwise) {
    reader.report(
      'front-yaml',
      where.inside,
      'Front matter is a list of keys and values: `title: Parallel bars`.',
    );
  }
  return { front, findings: reader.findings };
}

/** A sheet that says nothing about itself. */
const plainFront: FrontMatter = {
  span: null,
  title: null,
  id: null,
  version: null,
  date: null,
  author: null,
  school: null,
  status: null,
  course: null,
  groups: null,
  spares: null,
  minutes: null,
  print: 'A4',
  language: 'en-GB',
  saysLanguage: false,
  reviewed: null,
  nextReview: null,
  riskAssessment: null,
  kit: [],
  audience: null,
  safetyKeptIn: null,
};

type Draft = { -readonly [K in keyof FrontMatter]: FrontMatter[K] };

/** A value as it is written, with its place in the file. */
interface Written {
  readonly key: string;
  readonly text: string;
  readonly span: Span;
}

type Take = (reader: FrontReader, front: Draft, value: Written) => void;

const audiences: Readonly<Record<string, Audience>> = {
  pupils: 'pupils',
  students: 'pupils',
  teachers: 'teachers',
  technicians: 'technicians',
};

/** The keys, in the order in which they are usually written. */
const keys: Readonly<Record<string, Take>> = Object.assign(Object.create(null), {
  title: text('title'),
  id: text('id'),
  version: text('version'),
  date: date('date'),
  author: text('author'),
  school: text('school'),
  status: choice('status', ['draft', 'reviewed', 'issued', 'withdrawn']),
  course: text('course'),
  groups: count('groups', 1),
  spares: count('spares', 0),
  minutes: count('minutes', 1),
  print: choice('print', ['A4', 'Letter']),
  language: readLanguage,
  reviewed: date('reviewed'),
  'next-review': date('nextReview'),
  'risk-assessment': text('riskAssessment'),
  kit: readKit,
  audience: readAudience,
  safety: readSafety,
} satisfies Record<string, Take>);

export const frontMatterKeys: readonly string[] = Object.keys(keys);

class FrontReader {
  readonly findings: Finding[] = [];
  private readonly base: number;

  constructor(base: number) {
    this.base = base;
  }

  span(from: number, to: number): Span {
    return span(this.base + from, this.base + to);
  }

  report(code: SheetCode, where: Span, message: string, fixes: readonly Fix[] = []): void {
    this.findings.push(finding(code, { span: where, message, fixes }));
  }

  /** Another text for a value. */
  mended(value: Written, text: string): readonly Fix[] {
    return [{ title: `Write ${text}`, edits: [{ span: value.span, text }], certain: true }];
  }

  /** One of some words was wanted. */
  offer(value: Written, words: readonly string[], message: string): void {
    const meant = nearest(value.text, words);
    const fixes = meant.map((word) => ({
      title: `Write ${word}`,
      edits: [{ span: value.span, text: word }],
      certain: meant.length === 1,
    }));
    this.report('front-value', value.span, message, fixes);
  }
}

function readPair(reader: FrontReader, front: Draft, pair: Pair): void {
  if (!isScalar(pair.key)) return;
  const key = String(pair.key.value ?? '');
  const [from = 0, to = 0] = pair.key.range ?? [];
  const take = keys[key];
  if (take === undefined) {
    unknownKey(reader, key, reader.span(from, to));
    return;
  }
  const value = pair.value;
  if (isScalar(value)) {
    const [start = 0, end = 0] = value.range ?? [];
    const written = String(value.value ?? '').trim();
    if (written !== '') take(reader, front, { key, text: written, span: reader.span(start, end) });
  } else if (key === 'kit' && isSeq(value)) {
    readKitList(reader, front, value.items);
  } else if (value !== null && value !== undefined) {
    reader.report('front-value', reader.span(from, to), `\`${key}\` is one value on its line, not a list.`);
  }
}

function unknownKey(reader: FrontReader, key: string, where: Span): void {
  const meant = nearest(key.replace(/[_\s]/gu, '-'), frontMatterKeys);
  const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
  const fixes = meant.map((word) => ({
    title: `Write ${word}`,
    edits: [{ span: where, text: word }],
    certain: meant.length === 1,
  }));
  reader.report('front-key', where, `\`${key}\` is not read.${question}`, fixes);
}

type TextKey = 'title' | 'id' | 'version' | 'author' | 'school' | 'course' | 'riskAssessment';

function text(field: TextKey): Take {
  return (_, front, value) => {
    front[field] = value.text;
  };
}

/** A date begins as 2026-03-12; words may follow. */
function date(field: 'date' | 'reviewed' | 'nextReview'): Take {
  return (reader, front, value) => {
    front[field] = value.text;
    const [, month = '', day = ''] = /^\d{4}-(\d\d)-(\d\d)(?!\d)/u.exec(value.text) ?? [];
    if (Number(month) >= 1 && Number(month) <= 12 && Number(day) >= 1 && Number(day) <= 31) return;
    const meant = dateIn(value.text);
    const fixes = meant === null ? [] : reader.mended(value, meant);
    const message = `\`${value.key}\` is a date: year, month, day, as 2026-03-12.`;
    reader.report('front-value', value.span, message, fixes);
  };
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** `2026/3/12` or `12 March 2026` as 2026-03-12; null for a date whose order cannot be told, such as 3/4/2026. */
function dateIn(text: string): string | null {
  const [, year, month, day] = /^(\d{4})[-./ ](\d{1,2})[-./ ](\d{1,2})$/u.exec(text) ?? [];
  const [, wordDay, word = '', wordYear] = /^(\d{1,2})\s+([a-z]{3,9})\.?\s+(\d{4})$/iu.exec(text) ?? [];
  const parts = [
    year ?? wordYear,
    month ?? months.indexOf(word.slice(0, 3).toLowerCase()) + 1,
    day ?? wordDay,
  ];
  const [y, m, d] = parts.map(Number);
  if (y === undefined || !(m !== undefined && m >= 1 && m <= 12) || !(d !== undefined && d >= 1 && d <= 31))
    return null;
  return `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`;
}

function count(field: 'groups' | 'spares' | 'minutes', least: number): Take {
  return (reader, front, value) => {
    const digits = /^(\d{1,4})(?:\s*(?:min|minutes))?$/u.exec(value.text)?.[1];
    if (digits !== undefined && Number(digits) >= least) front[field] = Number(digits);
    else {
      const number = /^(\d{1,4})\s+\p{L}+$/u.exec(value.text)?.[1];
      const fixes = number === undefined || Number(number) < least ? [] : reader.mended(value, number);
      reader.report(
        'front-value',
        value.span,
        `\`${value.key}\` is a whole number, ${least} or more.`,
        fixes,
      );
    }
  };
}

const languageOf = choice('language', ['en-GB', 'en-US']);

function readLanguage(reader: FrontReader, front: Draft, value: Written): void {
  languageOf(reader, front, value);
  front.saysLanguage = front.language === value.text;
}

function choice<K extends 'status' | 'print' | 'language'>(
  field: K,
  words: readonly (Draft[K] & string)[],
): Take {
  return (reader, front, value) => {
    const word = words.find((known) => known === value.text);
    if (word !== undefined) front[field] = word;
    else
      reader.offer(value, words, `\`${value.key}\` is ${words.slice(0, -1).join(', ')} or ${words.at(-1)}.`);
  };
}

function readAudience(reader: FrontReader, front: Draft, value: Written): void {
  const audience = Object.hasOwn(audiences, value.text) ? audiences[value.text] : undefined;
  if (audience !== undefined) front.audience = audience;
  else reader.offer(value, Object.keys(audiences), '`audience` is pupils, teachers or technicians.');
}

function readSafety(reader: FrontReader, front: Draft, value: Written): void {
  const where = /^kept-in\s+(?:"([^"]+)"|'([^']+)'|([^"'\s].*))$/u.exec(value.text);
  const name = where?.[1] ?? where?.[2] ?? where?.[3];
  if (name !== undefined) front.safetyKeptIn = name;
  else {
    const written = /^kept[ _]?in\s+(["'][^"']+["']|[^"'\s].*)$/iu.exec(value.text)?.[1];
    const fixes = written === undefined ? [] : reader.mended(value, `kept-in ${written}`);
    const message = 'Say where the notes stand: `safety: kept-in "Laboratory notes"`.';
    reader.report('front-value', value.span, message, fixes);
  }
}

/** `board 1, plain paper 2, ruler 1`; a thing without a number is one. */
function readKit(reader: FrontReader, front: Draft, value: Written): void {
  const parts = value.text.split(',');
  front.kit = [...front.kit, ...parts.flatMap((_, i) => kitItem(reader, parts, i, value))];
}

function readKitList(reader: FrontReader, front: Draft, items: readonly unknown[]): void {
  for (const item of items) {
    if (!isScalar(item)) continue;
    const [from = 0, to = 0] = item.range ?? [];
    readKit(reader, front, { key: 'kit', text: String(item.value ?? ''), span: reader.span(from, to) });
  }
}

function kitItem(
  reader: FrontReader,
  parts: readonly string[],
  index: number,
  value: Written,
): readonly { item: string; count: number }[] {
  const written = (parts[index] ?? '').trim().replace(/\s+/gu, ' ');
  if (written === '') return [];
  const [, item = written, digits = '1'] = /^(.*\S)\s+(\d{1,4})$/u.exec(written) ?? [];
  if (/^\d/u.test(item)) {
    const [, number, thing] = /^(\d{1,4})\s*[x×]?\s+(\p{L}[\p{L}\p{M} -]*)$/u.exec(written) ?? [];
    const turned = parts.map((part, i) => (i === index ? `${thing} ${number}` : part.trim())).join(', ');
    // What YAML would read in another way stays as it is.
    const plain = thing !== undefined && /^[\p{L}\p{M}\d., ×-]*$/u.test(turned);
    reader.report(
      'front-value',
      value.span,
      `In \`kit\` the number stands behind the thing: \`ruler 1\`, not “${written}”.`,
      plain ? reader.mended(value, turned) : [],
    );
  }
  return [{ item, count: Number(digits) }];
}
