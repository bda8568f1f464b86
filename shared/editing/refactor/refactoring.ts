/** Ways of writing a sheet anew that keep its meaning. */
import type { TextEdit } from '../../findings/finding.ts';

export interface Refactoring {
  /** As a menu entry: "Write 9.5 cm". */
  readonly title: string;
  /** `extract` makes something of its own of what stands there: a setup's name, a variation. */
  readonly kind: 'rewrite' | 'extract';
  readonly edits: readonly TextEdit[];
}
