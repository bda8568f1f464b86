/** Rules over prose: what each looks at, and how a finding about a part of a run is made. */
import type { FindingCode } from '../../findings/catalogue.ts';
import { type Finding, type FindingParts, type Fix, finding } from '../../findings/finding.ts';
import type { HouseStyle } from '../../sheet/department/style.ts';
import { fix, type ProseTable, type Run, spanOf } from './run.ts';
import { type Value, valuesIn } from './values.ts';

/** What sheet and department say. */
export interface Setting {
  readonly american: boolean;
  /** False where the language is only the usual one. */
  readonly saysLanguage: boolean;
  readonly style: HouseStyle;
  /** Of electrodes, probes and rows. */
  readonly names: ReadonlySet<string>;
  /** E stands for an electromotive force somewhere in the text. */
  readonly emf: boolean;
}

export interface Passage {
  readonly run: Run;
  readonly values: readonly Value[];
  /** Those with slips in their unit. */
  readonly slipped: readonly Value[];
  /** Neighbours with little between them. */
  readonly pairs: readonly Pair[];
  readonly setting: Setting;
}

export interface Pair {
  readonly first: Value;
  readonly second: Value;
  /** What stands between them. */
  readonly between: string;
}

export type RunRule = (passage: Passage) => readonly Finding[];
/** Over words; a run need not hold a number. */
export type WordRule = (run: Run, setting: Setting) => readonly Finding[];
export type TableRule = (table: ProseTable, setting: Setting) => readonly Finding[];

export interface Place {
  readonly run: Run;
  readonly from: number;
  readonly to: number;
}

export function passageOf(run: Run, setting: Setting): Passage {
  const values = valuesIn(run.text);
  const slipped = values.filter(({ unit }) => unit !== null && unit.slips.length > 0);
  const pairs = values.flatMap((second, i) => {
    const first = values[i - 1];
    if (first === undefined || second.from - first.to > 8) return [];
    return [{ first, second, between: run.text.slice(first.to, second.from) }];
  });
  return { run, values, slipped, pairs, setting };
}

/** A finding about the text from `from` to `to` of a run. */
export function found(code: FindingCode, place: Place, parts: Omit<FindingParts, 'span'>): Finding {
  return finding(code, { ...parts, span: spanOf(place.run, place.from, place.to) });
}

/** One part of a run rewritten. */
export function rewrite(place: Place, text: string, menu: string, certain: boolean): readonly Fix[] {
  return fix(`Write ${menu}`, [{ ...place, text }], certain);
}
