/** Nothing begins unless all that the tests need is there, and pictures of earlier runs are gone. */
import { rmSync } from 'node:fs';
import { assertInstalled, shots, vsix } from './places.ts';

export default function setup(): void {
  assertInstalled();
  vsix();
  rmSync(shots, { recursive: true, force: true });
}
