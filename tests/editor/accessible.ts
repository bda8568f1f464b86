/** What axe-core finds on a page that keeps a person from using it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Frame } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly passes: readonly unknown[];
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** `rule: element` for every place; throws where axe looked at nothing. */
export async function barriers(frame: Frame): Promise<readonly string[]> {
  await frame.evaluate(axe);
  // The name axe is made by the line above.
  const { passes, violations } = await frame.evaluate<AxeResult>('axe.run(document)');
  if (passes.length === 0) throw new Error('axe-core looked at nothing');
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}
