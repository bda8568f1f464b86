/** From the problem's shapes to the region of bare paper: its edges in closed loops, paper on the left, tagged by what borders them. */
import { hypot } from '../maths.ts';
import { type Domain, type DomainEdge, type FieldProblem, INSULATING, type Loop } from '../problem.ts';
import { type Curve, curveLength } from './curve.ts';
import { TOUCH } from './intersect.ts';
import { signedArea } from './measure.ts';
import { type Cover, isBare, type Region, regionOf } from './region.ts';

/**
 * Metal counts where it lies on paper; beyond the paper's edge and over holes it only bridges. An edge between bare paper and metal
 * carries the conductor's number (the lowest where conductors overlap), every other edge and both sides of a slit are insulating.
 */
export function domainOf(problem: FieldProblem): Domain {
  return domainOfRegion(regionOf(problem), problem);
}

export function domainOfRegion(region: Region, problem: FieldProblem): Domain {
  const tags = tagsOf(region);
  const loops = traceLoops(region, tags);
  return { loops, conductors: problem.conductors.length, sheet_ohm: problem.sheet_ohm };
}

/** Tag of each half-edge with bare paper on its left that bounds the domain; null for all others. */
function tagsOf({ graph, faces, cover }: Region): (number | null)[] {
  return faces.cycle.map((cycle, h) => {
    const here = cover[cycle];
    const beyond = cover[faces.cycle[h ^ 1] ?? 0];
    if (!here || !beyond || !isBare(here)) return null;
    if (isBare(beyond)) return graph.edges[h >> 1]?.slit ? INSULATING : null;
    return tagAgainst(beyond);
  });
}

function tagAgainst({ insidePaper, inHole, conductors }: Cover): number {
  return insidePaper && !inHole ? (conductors[0] ?? INSULATING) : INSULATING;
}

function traceLoops({ faces }: Region, tags: readonly (number | null)[]): Loop[] {
  const { curves, origin, next } = faces;
  const onward = (h: number): number => {
    let g = next[h] ?? h;
    while (tags[g] === null) g = next[g ^ 1] ?? h;
    return g;
  };
  const corners = new Array<number>(Math.max(0, ...origin) + 1).fill(0);
  tags.forEach((tag, h) => {
    if (tag !== null) corners[origin[h] ?? 0] = (corners[origin[h] ?? 0] ?? 0) + 1;
  });
  const traced = new Set<number>();
  const loops: Loop[] = [];
  tags.forEach((tag, first) => {
    if (tag === null || traced.has(first)) return;
    const chain: Link[] = [];
    for (let h = first; !traced.has(h); h = onward(h)) {
      traced.add(h);
      const joinable = corners[origin[h] ?? 0] === 1;
      chain.push({ curve: curves[h] as Curve, tag: tags[h] ?? INSULATING, joinable });
    }
    if (!isSliver(chain.map(({ curve }) => curve))) loops.push({ edges: joined(chain).map(domainEdge) });
  });
  return loops;
}

/** Pieces of paper narrower than a few times the width within which points are one are nothing but rounding. */
const SLIVER = 10 * TOUCH;

/** A loop around paper of no width to speak of: area against half the length around it. A slit's loop encloses nothing, and stays. */
function isSliver(curves: readonly Curve[]): boolean {
  const around = curves.reduce((sum, curve) => sum + curveLength(curve), 0);
  const area = signedArea(curves);
  return area > 0 && !isThereAndBack(curves) && area < (SLIVER * around) / 2;
}

function isThereAndBack(curves: readonly Curve[]): boolean {
  return curves.every((c) =>
    curves.some((d) => d.ax === c.bx && d.ay === c.by && d.bx === c.ax && d.by === c.ay),
  );
}

/** A boundary piece; `joinable` if no other boundary touches its first point. */
interface Link {
  readonly curve: Curve;
  readonly tag: number;
  readonly joinable: boolean;
}

function domainEdge({ curve, tag }: Link): DomainEdge {
  const { ax: x, ay: y, cx, cy, sweep } = curve;
  return { x, y, tag, arc: sweep === 0 ? null : { x: cx, y: cy, anticlockwise: sweep > 0 } };
}

/** Joins neighbours that lie on one line or circle and border the same thing. */
function joined(chain: readonly Link[]): Link[] {
  const links: Link[] = [];
  for (const link of chain) {
    const last = links[links.length - 1];
    const longer = last && longerLink(last, link);
    if (longer) links[links.length - 1] = longer;
    else links.push(link);
  }
  const first = links[0];
  const last = links[links.length - 1];
  const around = links.length > 2 && first && last ? longerLink(last, first) : null;
  return around ? [around, ...links.slice(1, -1)] : links;
}

const SAME = 1e-9;

function longerLink(one: Link, two: Link): Link | null {
  if (!two.joinable || one.tag !== two.tag) return null;
  const { curve: p } = one;
  const { curve: q } = two;
  const curve = { ...p, bx: q.bx, by: q.by, sweep: p.sweep + q.sweep };
  if (p.sweep === 0 && q.sweep === 0) return onOneLine(p, q) ? { ...one, curve } : null;
  const alike = p.sweep * q.sweep > 0 && hypot(p.cx - q.cx, p.cy - q.cy) < SAME && Math.abs(curve.sweep) < 6;
  return alike ? { ...one, curve } : null;
}

function onOneLine(p: Curve, q: Curve): boolean {
  const ux = p.bx - p.ax;
  const uy = p.by - p.ay;
  const vx = q.bx - q.ax;
  const vy = q.by - q.ay;
  const whole = hypot(ux + vx, uy + vy);
  return ux * vx + uy * vy > 0 && Math.abs(ux * vy - uy * vx) <= SAME * whole;
}
