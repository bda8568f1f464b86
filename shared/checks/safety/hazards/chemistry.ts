/** Chemistries of cells that the text names. */
import type { Chemistry } from '../../../block/tree.ts';
import type { Cause, Scene } from '../hazard.ts';
import { mentionsOf } from '../reading/mentions.ts';
import { causeOf } from './causes.ts';

const named: readonly { readonly chemistry: Chemistry; readonly pattern: RegExp }[] = [
  { chemistry: 'zinc-carbon', pattern: /\bzinc[- /]+carbon\b|\bleclanch\S+/gu },
  {
    chemistry: 'zinc-chloride',
    pattern: /\bzinc[- ]chloride\b|\bheavy[- ]duty (?:cells?|batter(?:y|ies))\b/gu,
  },
  { chemistry: 'alkaline', pattern: /\balkaline\b/gu },
  {
    chemistry: 'nickel-metal-hydride',
    pattern:
      /\bnickel[- ]metal[- ]hydride\b|\bni-?mh\b|\brechargeable (?:aa |1\.[25] v )?(?:cells?|batter(?:y|ies))\b/gu,
  },
  {
    chemistry: 'lithium-ion',
    pattern:
      /\b(?:lithium|li)[- ]?(?:ion|polymer|po)\b|\blipos?\b|\bpower ?banks?\b|\b(?:mobile |cell |smart)?phone batter(?:y|ies)\b|\b18650s?\b/gu,
  },
  {
    chemistry: 'lead-acid',
    pattern: /\blead[- ]acid\b|\b(?:car|motor(?:cycle|bike)|vehicle) (?:batter(?:y|ies)|accumulators?)\b/gu,
  },
  {
    chemistry: 'lithium-primary',
    pattern:
      /\blithium(?:[- ](?:primary|metal|iron|aa))?(?:[- ](?:primary|disulfide))? (?:cells?|batter(?:y|ies))\b/gu,
  },
];

export type NamedCause = Cause & { readonly chemistry: Chemistry };

/** Where the text says that such cells are used. */
export function textChemistries({ text }: Scene): readonly NamedCause[] {
  return named.flatMap(({ chemistry, pattern }) =>
    mentionsOf(text, pattern).map((mention) => ({ ...causeOf(mention), chemistry })),
  );
}
