/** Reads one limit of a department: a value, and on whose word. */

import type { Limit } from './department.ts';
import type { Entry, KeyReader, Written } from './key-reader.ts';
import { offered } from './key-reader.ts';
import { type LimitName, limitUnits, type UsualLimit, usualLimits } from './limits.ts';

const limitKeys = ['limit', 'source'] as const;

/**
 * The limit as it counts. Without a source no more is allowed than usually; beyond what nobody may allow the usual value stays. Null
 * where nothing could be read.
 */
export function readLimit(reader: KeyReader, entry: Entry<LimitName>): Limit | null {
  const usual: UsualLimit = usualLimits[entry.key];
  const shown = `${usual.value} ${usual.unit}`;
  let written: Written | null = null;
  let source: string | null = null;
  for (const part of reader.below(entry, limitKeys, `\`limit: ${shown}\` and \`source: …\``)) {
    const text = reader.text(part, part.key === 'limit' ? shown : 'Handbook of the school, 2026, page 4');
    if (part.key === 'limit') written = text;
    else source = text?.text ?? null;
  }
  if (written === null) return null;
  const value = valueIn(reader, entry.key, written);
  if (value === null) return null;
  if (usual.most !== undefined && value > usual.most.value) {
    const message = `\`${entry.key}\` goes up to ${usual.most.value} ${usual.unit}: ${usual.most.why}. ${shown} stay.`;
    reader.report('department-value', written.span, message);
    return null;
  }
  const looser = value > usual.value;
  if (source === null) {
    const until = looser ? ` Until then ${shown} stay.` : '';
    reader.report(
      'limit-source',
      entry.span,
      `On whose word? \`source\` says where this limit comes from.${until}`,
    );
    return looser ? null : { value, unit: usual.unit, source: 'the department, no source given', looser };
  }
  if (looser) {
    const message = `${written.text} are more than is usual, ${shown} (${usual.source}). Prints for teachers and technicians say so.`;
    reader.report('limit-looser', written.span, message);
  }
  return { value, unit: usual.unit, source, looser };
}

/** In the unit of the table. */
function valueIn(reader: KeyReader, name: LimitName, written: Written): number | null {
  const { unit, value } = usualLimits[name];
  const [, digits = '', word = ''] = /^(\d{1,6}(?:\.\d{1,6})?)\s*(\D*)$/u.exec(written.text) ?? [];
  const symbol = word.replace(/\u03bc/gu, 'µ').replace(/\s/gu, '');
  const known = Object.entries(limitUnits[unit]).find(([one]) => one.replace(/\s/gu, '') === symbol);
  if (known !== undefined && Number(digits) > 0) return Number(digits) * known[1];
  const fixes = Number(digits) > 0 && word === '' ? offered(written, [`${digits} ${unit}`]) : [];
  reader.report(
    'department-value',
    written.span,
    `\`${name}\` is a number in ${unit}: ${value} ${unit}.`,
    fixes,
  );
  return null;
}
