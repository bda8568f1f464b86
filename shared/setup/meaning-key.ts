/** What a setup means, without where it stands: setups of one key have one solution and one drawing, wherever the text has moved. */
import type { Setup } from './setup.ts';

/** Keys that hold places in the text or what is said about them. */
const placed: readonly string[] = ['span', 'findings', 'block'];

export function meaningKey(setup: Setup): string {
  return JSON.stringify(setup, (key, value: unknown) => (placed.includes(key) ? undefined : value));
}
