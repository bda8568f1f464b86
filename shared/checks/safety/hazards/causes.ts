/** What makes a hazard be there: a line of a block, or words of the text. */
import type { Setup } from '../../../setup/setup.ts';
import type { Span } from '../../../text/span.ts';
import type { Cause, Scene } from '../hazard.ts';
import { type Mention, mentionsOf, type Way } from '../reading/mentions.ts';

/** At a line of every setup that has one; lines that a variation takes over count once. */
export function inSetups(
  scene: Scene,
  lineOf: (setup: Setup) => Span | null | undefined,
  message: string,
): readonly Cause[] {
  const seen = new Set<number>();
  return scene.setups.flatMap((setup) => {
    const span = lineOf(setup);
    if (!span || seen.has(span.from)) return [];
    seen.add(span.from);
    return [{ span, readers: scene.readersOf(setup), message }];
  });
}

/** The supply's line of every setup whose supply is such. */
export function atSupply(
  scene: Scene,
  is: (supply: NonNullable<Setup['supply']>, setup: Setup) => boolean,
): readonly Cause[] {
  return inSetups(
    scene,
    (setup) => (setup.supply !== null && is(setup.supply, setup) ? setup.supply.span : null),
    'The supply stands here.',
  );
}

/** Words of the text that say that something is used. */
export function inText({ text }: Scene, pattern: RegExp, way: Way = 'used'): readonly Cause[] {
  return mentionsOf(text, pattern, way).map(causeOf);
}

export function causeOf({ span, readers, match }: Mention): Cause {
  return { span, readers, message: `“${match[0].trim()}” stands here.` };
}
