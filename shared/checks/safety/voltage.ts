/** Stops for what a setup puts on bare electrodes: more than may be touched, kilovolts, supplies that are not limited. */
import { type Finding, finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import type { Setup, Supply } from '../../setup/setup.ts';
import type { Limit } from '../../sheet/department/department.ts';
import type { LimitName } from '../../sheet/department/limits.ts';
import type { Span } from '../../text/span.ts';
import type { Cause, Scene } from './hazard.ts';
import { inText } from './hazards/causes.ts';
import { liquidWords } from './hazards/materials.ts';
import { mentionsOf } from './reading/mentions.ts';

export function voltageStops(scene: Scene): readonly Finding[] {
  const liquids = inText(scene, liquidWords);
  const seen = new Set<number>();
  const inSetups = scene.setups.flatMap((setup) => {
    const found = stopOf(setup, scene, liquids);
    if (found === null || seen.has(found.span.from)) return [];
    seen.add(found.span.from);
    return [found];
  });
  return [...inSetups, ...statedVoltages(scene, liquids)];
}

const lower = 'This practical needs 1.5 V to 6 V: lower the supply.';

function stopOf(setup: Setup, scene: Scene, liquids: readonly Cause[]): Finding | null {
  const { supply } = setup;
  if (supply?.source === 'eht') return ehtOnPaper(supply, setup, scene);
  if (supply?.source === 'ht') {
    return finding('ht-supply', {
      span: supply.span,
      message: `${inWords(supply.emf_V, supply.ac)} from a supply of high tension can kill, and the electrodes here are bare.`,
      hints: [lower, ...limitedHint(supply, scene)],
    });
  }
  const greatest = greatestOf(setup);
  return greatest === null ? null : tooHigh(greatest, scene, liquids);
}

interface Voltage {
  readonly value_V: number;
  readonly ac: boolean;
  readonly span: Span;
  readonly supply: Supply | null;
}

/** The greatest difference between metal, with the line that makes it. */
function greatestOf({ supply, electrodes }: Setup): Voltage | null {
  const ac = supply?.ac ?? false;
  const fixed = [
    { value: 0, span: null },
    ...(supply === null ? [] : [{ value: supply.emf_V, span: supply.span }]),
    ...electrodes.flatMap(({ connection, span }) =>
      connection?.kind === 'held' ? [{ value: connection.potential_V, span }] : [],
    ),
  ];
  const high = fixed.reduce((a, b) => (b.value > a.value ? b : a));
  const low = fixed.reduce((a, b) => (b.value < a.value ? b : a));
  const span = (Math.abs(high.value) >= Math.abs(low.value) ? high.span : low.span) ?? high.span ?? low.span;
  return span === null ? null : { value_V: high.value - low.value, ac, span, supply };
}

function tooHigh(
  { value_V, ac, span, supply }: Voltage,
  scene: Scene,
  liquids: readonly Cause[],
): Finding | null {
  const { limits } = scene.department;
  const touch = limits[limitName('touch', ac)];
  const wet = limits[limitName('liquid', ac)];
  if (value_V > touch.value) {
    return finding('voltage-touch', {
      span,
      message: `${inWords(value_V, ac)} on bare electrodes: above ${inWords(touch.value, ac)} this is not a practical for pupils.`,
      hints: [lower, sourceHint(touch), ...limitedHint(supply, scene)],
    });
  }
  const [liquid] = liquids;
  if (liquid === undefined || value_V <= wet.value) return null;
  return finding('voltage-liquid', {
    span,
    message: `${inWords(value_V, ac)} on bare electrodes near a liquid: above ${inWords(wet.value, ac)} this is not a practical for pupils.`,
    hints: [lower, sourceHint(wet)],
    related: [{ span: liquid.span, message: liquid.message }],
  });
}

const limitName = (kind: 'touch' | 'liquid', ac: boolean): LimitName => `${kind}-${ac ? 'ac' : 'dc'}`;

const inWords = (value_V: number, ac: boolean): string =>
  `${printQuantity(value_V, 'potential')} ${ac ? 'a.c.' : 'd.c.'}`;

const sourceHint = ({ value, unit, source }: Limit): string => `The limit of ${value} ${unit}: ${source}.`;

/** A limit that is set on a supply is none of its construction; and above some milliamperes it is none at all. */
function limitedHint(supply: Supply | null, { department }: Scene): readonly string[] {
  if (supply === null || supply.limit_A === null) return [];
  const limited = department.limits['limited-current'];
  const told = printQuantity(supply.limit_A, 'current');
  return supply.limit_A * 1000 > limited.value
    ? [
        `A limit of ${told} is none here: a source counts as limited at ${limited.value} mA and less, by its own construction (${limited.source}).`,
      ]
    : [
        `A limit of ${told} does not change this: the electrodes and the probe are bare, and pupils hold them.`,
      ];
}

function ehtOnPaper(supply: Supply, setup: Setup, { solutions, department }: Scene): Finding {
  const limit_A = supply.limit_A ?? department.limits['limited-current'].value / 1000;
  const paper = solutions.get(setup.block)?.readings.resistance_ohm ?? null;
  const left_V = paper === null ? null : paper * limit_A;
  const falls =
    paper === null || left_V === null || left_V >= supply.emf_V
      ? []
      : [
          `It would not stand either: ${printQuantity(limit_A, 'current')} through this paper of ${printQuantity(paper, 'resistance', { digits: 2 })} is ${printQuantity(left_V, 'potential', { digits: 2 })}.`,
        ];
  return finding('eht-on-paper', {
    span: supply.span,
    message: `${inWords(supply.emf_V, supply.ac)} on conducting paper: pupils hold the probe. This is not a practical for them.`,
    hints: [lower, ...falls],
  });
}

const source = String.raw`\b(?:suppl(?:y|ies)|power[- ]packs?|voltage|output|p\.d\.)\b`;
const setVoltage = new RegExp(
  `(?:\\b(?:set|turn|adjust|raise|increase|put|bring|switch)\\b[^.;?\\n]{0,60}?${source}[^.;?\\n]{0,30}?|` +
    `${source}[^.;?\\n]{0,30}?\\b(?:is|are|be|was|were) (?:then |now )?(?:set|turned|adjusted|raised|increased|put|brought|switched) (?:up )?)` +
    String.raw`\b(?:to|at) (?:about |exactly |at least |up to )?(\d+(?:\.\d+)?) ?(kv|v)\b(?: ?(a\.?c)\b)?(?! ?\/)`,
  'gu',
);

/** Voltages to which the text has the supply set. */
function statedVoltages(scene: Scene, liquids: readonly Cause[]): readonly Finding[] {
  return mentionsOf(scene.text, setVoltage, 'done').flatMap(({ match, span }) => {
    const [, number = '', unit = '', alternating] = match;
    const value_V = Number(number) * (unit === 'kv' ? 1000 : 1);
    const found = tooHigh({ value_V, ac: alternating !== undefined, span, supply: null }, scene, liquids);
    return found === null ? [] : [found];
  });
}
