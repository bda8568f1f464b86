/** Nothing begins unless all that the tests need is there, and pictures of earlier failures are gone. */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { assertInstalled, packaged, shots } from './places.ts';

export default function setup(): void {
  assertInstalled();
  packaged();
  mkdirSync(shots, { recursive: true });
  for (const name of readdirSync(shots)) if (name.startsWith('failed-')) rmSync(join(shots, name));
}
