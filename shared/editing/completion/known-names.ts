/** Names that a line of a block may speak of. */
import type { Block } from '../../block/tree.ts';
import type { Setup } from '../../setup/setup.ts';

/** A name of the setup. */
export interface Known {
  readonly name: string;
  readonly kind: 'electrode' | 'probe' | 'row';
}

/** Names of the setup, and those that the block gives to what has no place yet. */
export function knownNames({ electrodes, probes, rows }: Setup, { statements }: Block): readonly Known[] {
  const inSetup: readonly Known[] = [
    ...electrodes.map(({ name }) => ({ name, kind: 'electrode' as const })),
    ...probes.map(({ name }) => ({ name, kind: 'probe' as const })),
    ...rows.map(({ name }) => ({ name, kind: 'row' as const })),
  ];
  const given = statements.flatMap((statement): readonly Known[] => {
    if (statement.kind === 'shape') return [{ name: statement.name.text, kind: 'electrode' }];
    if (statement.kind === 'probe' || statement.kind === 'row') {
      return [{ name: statement.name.text, kind: statement.kind }];
    }
    return [];
  });
  return [...inSetup, ...given];
}
