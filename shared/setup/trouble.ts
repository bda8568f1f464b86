/** What to say where the engine finds no solution. */
import type { FieldTrouble } from '../field/field.ts';
import { type Finding, finding } from '../findings/finding.ts';
import type { Electrode, Setup } from './setup.ts';
import { shown } from './shown.ts';

export function troubleFinding(setup: Setup, trouble: FieldTrouble): Finding {
  const of = (conductor: number): Electrode | undefined =>
    setup.electrodes.find((electrode) => electrode.conductor === conductor);
  const at = setup.paper?.span ?? setup.span;
  switch (trouble.kind) {
    case 'short': {
      const [a, b] = [of(trouble.a), of(trouble.b)];
      const apart = trouble.gap_mm > 0 ? `come within ${shown(trouble.gap_mm, 'length')}` : 'touch';
      return finding('short-circuit', {
        span: b?.span ?? at,
        message: `${a?.name} and ${b?.name} ${apart}: a short circuit.`,
      });
    }
    case 'no-metal': {
      const electrode = of(trouble.conductor);
      return finding('off-paper', {
        span: electrode?.span ?? at,
        message: `No part of ${electrode?.name} lies on the paper.`,
      });
    }
    case 'no-paper':
      return finding('not-solved', { span: at, message: 'Metal and holes leave no bare paper.' });
    case 'too-large':
      return finding('not-solved', {
        span: at,
        message: `This setup is too fine to solve: ${trouble.unknowns} unknowns.`,
        hints: ['Take away details much smaller than the paper.'],
      });
    case 'numerical':
      return finding('not-solved', {
        span: at,
        message: `The field could not be solved (${trouble.detail}).`,
      });
  }
}
