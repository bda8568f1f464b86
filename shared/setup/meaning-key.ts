/** What a setup means, without where it stands: setups of one key have one solution and one drawing, wherever the text has moved. */
import { fingerprint } from '../text/fingerprint.ts';
import type { Setup } from './setup.ts';

/** Keys that hold places in the text or what is said about them. */
const placed: readonly string[] = ['span', 'findings', 'block'];

/** Setups never change. */
const keys = new WeakMap<Setup, string>();

export function meaningKey(setup: Setup): string {
  const known = keys.get(setup) ?? fingerprint(meaningIn(setup));
  keys.set(setup, known);
  return known;
}

const meaningIn = (setup: Setup): string =>
  JSON.stringify(setup, (key, value: unknown) => (placed.includes(key) ? undefined : value));
