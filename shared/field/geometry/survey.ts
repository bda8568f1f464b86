/** What a problem's shapes amount to before anything is solved: areas, contacts between conductors, pieces of paper left alone. */
import type { Domain, FieldProblem } from '../problem.ts';
import { type Contact, contactsOf } from './contacts.ts';
import type { Bounds } from './curve.ts';
import { domainOfRegion } from './domain.ts';
import { type Island, islandsOf } from './islands.ts';
import { boundsOfCurves, outlineBounds } from './measure.ts';
import { type Cover, type PieceNumber, type Region, regionOf } from './region.ts';

export { distanceToOutline, insideOutline, outlineArea, outlineBounds } from './measure.ts';

export interface Survey {
  readonly conductors: readonly ConductorSurvey[];
  /** Pairs of conductors nearer than 0.05 mm to each other on the paper, the lower number first; each pair once, at its narrowest. */
  readonly contacts: readonly Contact[];
  /** Pieces of bare paper that no conductor borders. */
  readonly islands: readonly Island[];
}

/** Pieces that overlap count once. Metal over a hole or beyond the paper's edge is not on the paper. */
export interface ConductorSurvey {
  readonly area_mm2: number;
  readonly areaOnPaper_mm2: number;
  readonly pieces: readonly PieceSurvey[];
}

export interface PieceSurvey {
  readonly area_mm2: number;
  readonly areaOnPaper_mm2: number;
  readonly bounds: Bounds;
  /** Null where none of it is on the paper. */
  readonly boundsOnPaper: Bounds | null;
}

export function surveyProblem(problem: FieldProblem): Survey {
  const region = regionOf(problem);
  const domain: Domain = domainOfRegion(region, problem);
  const conductors = problem.conductors.map((pieces, conductor) => {
    const inside = ({ conductors: here }: Cover) => here.includes(conductor);
    return {
      area_mm2: areaWhere(region, inside),
      areaOnPaper_mm2: areaWhere(region, (cover) => isOnPaper(cover) && inside(cover)),
      pieces: pieces.map(({ outer }, piece) =>
        surveyPiece(region, { conductor, piece }, outlineBounds(outer)),
      ),
    };
  });
  return { conductors, contacts: contactsOf(region, domain), islands: islandsOf(domain) };
}

function isOnPaper({ insidePaper, inHole }: Cover): boolean {
  return insidePaper && !inHole;
}

function surveyPiece(region: Region, { conductor, piece }: PieceNumber, bounds: Bounds): PieceSurvey {
  const inside = ({ pieces }: Cover) =>
    pieces.some((other) => other.conductor === conductor && other.piece === piece);
  const onPaper = (cover: Cover) => isOnPaper(cover) && inside(cover);
  const { faces, cover } = region;
  const rim = faces.curves.filter((_, h) => {
    const here = cover[faces.cycle[h] ?? 0];
    return here && onPaper(here);
  });
  return {
    area_mm2: areaWhere(region, inside),
    areaOnPaper_mm2: areaWhere(region, onPaper),
    bounds,
    boundsOnPaper: rim.length > 0 ? boundsOfCurves(rim) : null,
  };
}

/** The parts of all cycles of such faces; small negative sums are rounding. */
function areaWhere({ faces, cover }: Region, holds: (cover: Cover) => boolean): number {
  let area = 0;
  cover.forEach((here, cycle) => {
    if (holds(here)) area += faces.areas[cycle] ?? 0;
  });
  return Math.max(0, area);
}
