/** Nothing begins unless all that the tests need is there, and pictures of earlier runs are gone. */
import { rmSync } from 'node:fs';
import { assertInstalled, packaged, shots } from './places.ts';

export default function setup(): void {
  assertInstalled();
  packaged();
  rmSync(shots, { recursive: true, force: true });
}
