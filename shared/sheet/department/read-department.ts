/** Reads `department.yaml`. Total: what cannot be taken is named, and stays as usual. */
import { blockCodes } from '../../findings/block-codes.ts';
import { catalogue, type FindingCode } from '../../findings/catalogue.ts';
import { departmentCodes } from '../../findings/department-codes.ts';
import type { CatalogueEntry } from '../../findings/entry.ts';
import type { Finding } from '../../findings/finding.ts';
import { setupCodes } from '../../findings/setup-codes.ts';
import { sheetCodes } from '../../findings/sheet-codes.ts';
import type { Source } from '../../text/source.ts';
import { readYamlMap } from '../yaml-map.ts';
import { type Department, type SettableSeverity, settableSeverities, usualDepartment } from './department.ts';
import { type Entry, KeyReader } from './key-reader.ts';
import { type LimitName, limitNames } from './limits.ts';
import { readLimit } from './read-limit.ts';
import { type HouseStyle, styleChoices, styleNames } from './style.ts';

export interface DepartmentReading {
  readonly source: Source;
  readonly department: Department;
  /** Their places are in the department's file. */
  readonly findings: readonly Finding[];
}

export function readDepartment(source: Source): DepartmentReading {
  const reader = new KeyReader();
  const whole = { from: 0, to: source.text.length };
  const yaml = readYamlMap(source.text, whole);
  if (yaml === null) reader.report('department-yaml', whole, 'This file is too large to be read.');
  for (const { span, message } of yaml?.troubles ?? []) reader.report('department-yaml', span, message);
  if (yaml?.otherwise) {
    const example = 'A department’s file is a list of keys and values: `review: 12 months`.';
    reader.report('department-yaml', whole, example);
  }
  let department = usualDepartment;
  for (const entry of reader.entries(yaml?.map?.items ?? [], departmentKeys))
    department = { ...department, ...takes[entry.key](reader, entry) };
  return { source, department, findings: reader.findings };
}

type Take = (reader: KeyReader, entry: Entry<string>) => Partial<Department>;

/** The keys, in the order in which they are usually written. */
const takes = {
  severities: readSeverities,
  limits: readLimits,
  style: readStyle,
  review: readReview,
} as const satisfies Readonly<Record<string, Take>>;

export const departmentKeys = Object.keys(takes) as readonly (keyof typeof takes)[];

function readSeverities(reader: KeyReader, entry: Entry<string>): Partial<Department> {
  const severities = new Map<FindingCode, SettableSeverity>();
  const codes = Object.keys(catalogue) as readonly FindingCode[];
  for (const one of reader.below(entry, codes, '`unit-space: note`')) {
    const why = fixedBecause(one.key);
    if (why !== null) {
      reader.report('severity-fixed', one.span, `\`${one.key}\` ${why}: it keeps its severity.`);
      continue;
    }
    const severity = reader.word(one, settableSeverities);
    if (severity !== null) severities.set(one.key, severity);
  }
  return { severities };
}

/** Codes whose severity a department may set. */
export const settableCodes = (Object.keys(catalogue) as readonly FindingCode[]).filter(
  (code) => fixedBecause(code) === null,
);

/** A stop cannot be silenced; and where something could not be read, no word of a department makes it readable. */
function fixedBecause(code: FindingCode): string | null {
  const usual: CatalogueEntry = catalogue[code];
  if (usual.severity === 'stop') return 'says that something is no practical for pupils';
  if (Object.hasOwn(departmentCodes, code)) return 'is about this file';
  const reading = [blockCodes, setupCodes, sheetCodes].some((codes) => Object.hasOwn(codes, code));
  return reading && usual.severity === 'error' ? 'says that something cannot be read or solved' : null;
}

function readLimits(reader: KeyReader, entry: Entry<string>): Partial<Department> {
  const example = '`touch-dc:` and below it `limit: 30 V` and `source: …`';
  const own = reader.below<LimitName>(entry, limitNames, example).flatMap((one) => {
    const limit = readLimit(reader, one);
    return limit === null ? [] : [[one.key, limit] as const];
  });
  return { limits: { ...usualDepartment.limits, ...Object.fromEntries(own) } };
}

function readStyle(reader: KeyReader, entry: Entry<string>): Partial<Department> {
  const said = reader.below(entry, styleNames, '`headings: brackets`').map((one) => {
    const words = Object.keys(styleChoices[one.key].ways);
    return [one.key, reader.word(one, words)] as const;
  });
  // Each word is one of the ways of its key.
  return { style: { ...usualDepartment.style, ...(Object.fromEntries(said) as Partial<HouseStyle>) } };
}

function readReview(reader: KeyReader, entry: Entry<string>): Partial<Department> {
  const written = reader.text(entry, '12 months');
  if (written === null) return {};
  const [, digits = '', unit = ''] = /^(\d{1,3})\s*(months?|years?)?$/u.exec(written.text) ?? [];
  const reviewMonths = Number(digits) * (unit.startsWith('year') ? 12 : 1);
  if (reviewMonths >= 1 && reviewMonths <= 120) return { reviewMonths };
  const message = '`review` is the time from one review to the next, up to 10 years: 12 months.';
  reader.report('department-value', written.span, message);
  return {};
}
