/** Carries out `move`: a statement with another place, in its own form. */
import type { MoveStatement, Place, ProbeStatement, RowStatement, Shape, Statement } from '../block/tree.ts';
import { type Report, rewrite } from './report.ts';

/** The statement as moved; 'as a whole' where pieces are shifted together; null where the move does not suit it. */
export function moved(
  named: readonly Statement[],
  move: MoveStatement,
  report: Report,
): Statement | 'as a whole' | null {
  const [first] = named;
  if (first?.kind === 'probe') return movedProbe(first, move, report);
  if (first?.kind === 'row') return movedRow(first, move, report);
  if (first?.kind !== 'shape') return null;
  if (named.length === 1) return movedShape(first, move, report);
  return move.to.kind === 'place' ? 'as a whole' : misfit(move, 'at', report);
}

function movedShape(shape: Shape, move: MoveStatement, report: Report): Shape | 'as a whole' | null {
  const { to } = move;
  switch (shape.shape) {
    case 'outline':
    case 'strip':
      return to.kind === 'place' ? 'as a whole' : misfit(move, 'at', report);
    case 'spike':
    case 'prong':
      if (to.kind !== 'tip') {
        return misfit(move, shape.tip.kind === 'on' ? `on ${shape.tip.of.text} at` : 'tip at', report);
      }
      return { ...shape, tip: to.tip, pointing: to.pointing ?? shape.pointing };
    default:
      if (to.kind !== 'place') return misfit(move, 'at', report);
      return { ...shape, place: turnedAlike(to.place, shape.place) };
  }
}

/** A move without `turned` keeps the turn of an earlier move. */
export function turnedAs(earlier: MoveStatement | undefined, move: MoveStatement): MoveStatement {
  if (earlier?.to.kind !== 'place' || move.to.kind !== 'place') return move;
  return { ...move, to: { ...move.to, place: turnedAlike(move.to.place, earlier.to.place) } };
}

/** A move without `turned` keeps the angle. */
const turnedAlike = (to: Place, from: Place): Place => ({ ...to, turned: to.turned ?? from.turned });

function movedProbe(probe: ProbeStatement, move: MoveStatement, report: Report): ProbeStatement | null {
  const { to } = move;
  if (to.kind === 'probe') return { ...probe, where: to.where };
  if (to.kind === 'place' && to.place.anchor.kind === 'at') return { ...probe, where: to.place.anchor.point };
  return misfit(move, 'at', report);
}

function movedRow(row: RowStatement, move: MoveStatement, report: Report): RowStatement | null {
  const { to } = move;
  if (to.kind !== 'row') return misfit(move, 'from … to', report);
  return { ...row, start: to.start, end: to.end, steps: to.steps ?? row.steps };
}

function misfit(move: MoveStatement, form: string, report: Report): null {
  const name = move.name.text;
  const tip = form === 'tip at' && move.to.kind === 'place' && move.to.place.anchor.kind === 'at';
  return report('move-form', {
    span: move.to.span,
    message: `${name} keeps the form of its line: move ${name} ${form} …`,
    fixes: tip ? [rewrite({ from: move.to.span.from, to: move.to.span.from }, 'tip ')] : [],
  });
}
