/** The chemistry of cells on bare clips: which are none for pupils, and whether it is said at all. */
import type { Chemistry } from '../../block/tree.ts';
import { type Finding, finding } from '../../findings/finding.ts';
import type { SafetyCode } from '../../findings/safety-codes.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Cause, Scene } from './hazard.ts';
import { atSupply, inText } from './hazards/causes.ts';
import { type NamedCause, textChemistries } from './hazards/chemistry.ts';

interface Verdict {
  readonly code: SafetyCode;
  readonly message: string;
}

const other = 'Zinc-carbon and zinc chloride cells give less current into a short circuit.';

const verdicts: Partial<Readonly<Record<Chemistry, Verdict>>> = {
  'lithium-ion': {
    code: 'cell-lithium-ion',
    message: 'Lithium-ion cells vent and burn when bare clips short them: not for a practical of pupils.',
  },
  'lead-acid': {
    code: 'cell-lead-acid',
    message:
      'A lead-acid battery gives hundreds of amperes when bare clips short it: not for a practical of pupils.',
  },
  'lithium-primary': { code: 'cell-lithium', message: 'Lithium cells may vent when bare clips short them.' },
};

export function cellChecks(scene: Scene): readonly Finding[] {
  const inWords = textChemistries(scene);
  const inBlocks = atSupply(scene, () => true).flatMap((cause): readonly NamedCause[] => {
    const chemistry = supplyAt(scene, cause)?.chemistry ?? null;
    return chemistry === null ? [] : [{ ...cause, chemistry }];
  });
  return [
    ...[...inBlocks, ...inWords].flatMap(verdictOn),
    ...(inWords.length > 0 ? [] : unsaid(scene)),
    ...parallel(scene),
  ];
}

function supplyAt({ setups }: Scene, { span }: Cause): Setup['supply'] {
  return setups.find(({ supply }) => supply?.span.from === span.from)?.supply ?? null;
}

function verdictOn({ chemistry, span }: NamedCause): readonly Finding[] {
  const verdict = verdicts[chemistry];
  return verdict === undefined
    ? []
    : [finding(verdict.code, { span, message: verdict.message, hints: [other] })];
}

function unsaid(scene: Scene): readonly Finding[] {
  return atSupply(scene, ({ source, chemistry }) => source === 'cell' && chemistry === null).map(
    ({ span }) => {
      const end = { from: span.to, to: span.to };
      return finding('cell-chemistry', {
        span,
        message: 'Of which chemistry are the cells? How hot a short circuit grows depends on it.',
        hints: [other],
        fixes: ['zinc-carbon', 'zinc-chloride', 'alkaline'].map((word) => ({
          title: `Add ${word}`,
          edits: [{ span: end, text: `, ${word}` }],
          certain: false,
        })),
      });
    },
  );
}

function parallel(scene: Scene): readonly Finding[] {
  const pattern =
    /\b(?:cells?|batter(?:y|ies))\b[^.;?\n]{0,60}\bin parallel\b|\bin parallel\b[^.;?\n]{0,30}\b(?:cells|batteries)\b/gu;
  return inText(scene, pattern).map(({ span }) =>
    finding('cells-parallel', {
      span,
      message:
        'Cells in parallel drive current through each other, and a short circuit takes the current of all.',
      hints: ['One cell does here.'],
    }),
  );
}
