/** The symbolic half of the factorisation: which unknowns meet in which front, in what order they leave, and how much memory that takes. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Dissection } from './dissection.ts';

/** Which unknowns each element holds. Unknowns come in groups that enter and leave together (the inner nodes of an edge). */
export interface UnknownGroups {
  /** Unknowns of each group. */
  readonly size: Int32Array;
  /** 1 for groups that stay to the root. */
  readonly retained: Uint8Array;
  /** The last `jumps` groups, retained ones of one unknown each, are jumps: a constant is 1 on all other unknowns and 0 on these. */
  readonly jumps: number;
  /** Groups of element e: list[start[e] … start[e + 1] - 1]; repetitions allowed. */
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** Front n holds the unknowns rows[rowStart[n] … rowStart[n + 1] - 1], in order of elimination, and eliminates the first leaving[n]. */
export interface FrontPlan {
  readonly dissection: Dissection;
  readonly rowStart: Int32Array;
  readonly rows: Int32Array;
  readonly leaving: Int32Array;
  /** First unknown of each group, in order of elimination, retained groups last; -1 where no element holds the group. */
  readonly first: Int32Array;
  readonly unknowns: number;
  readonly retained: number;
  readonly jumps: number;
  /** Place of front n's columns in the factor, and the sizes of factor and working stack, in numbers. */
  readonly factorStart: Int32Array;
  readonly factorSize: number;
  readonly stackSize: number;
  readonly largestFront: number;
}

export function planFronts(groups: UnknownGroups, dissection: Dissection): FrontPlan {
  const meetings = meet(groups, dissection);
  const { first, unknowns, retained } = numberUnknowns(groups, meetings);
  const rows = expandRows(groups, meetings, first, unknowns);
  return {
    dissection,
    first,
    unknowns,
    retained,
    jumps: groups.jumps,
    ...rows,
    ...measure(dissection, rows),
  };
}

/** Groups of each front, the leaving ones first. */
interface Meetings {
  readonly start: Int32Array;
  readonly list: Int32Array;
  readonly leaving: Int32Array;
}

/** A group leaves at the smallest front that covers all its elements. */
function meet(groups: UnknownGroups, dissection: Dissection): Meetings {
  const { order, from, to, left, right } = dissection;
  const { lowest, highest } = groupRanges(groups, order);
  const fronts = from.length;
  const start = new Int32Array(fronts + 1);
  const leaving = new Int32Array(fronts);
  const mark = new Int32Array(groups.size.length).fill(-1);
  const staying: number[] = [];
  let list = new Int32Array(16 * fronts);
  let end = 0;
  for (let n = 0; n < fronts; n++) {
    staying.length = 0;
    const take = (source: Int32Array, low: number, high: number): void => {
      if (end + staying.length + high - low > list.length) list = widened(list, high - low);
      for (let k = low; k < high; k++) {
        const g = source[k]!;
        if (mark[g] === n) continue;
        mark[g] = n;
        if (lowest[g]! >= from[n]! && highest[g]! < to[n]!) list[end++] = g;
        else staying.push(g);
      }
    };
    if (left[n]! < 0) {
      const e = order[from[n]!]!;
      take(groups.list, groups.start[e]!, groups.start[e + 1]!);
    } else {
      for (const child of [left[n]!, right[n]!])
        take(list, start[child]! + leaving[child]!, start[child + 1]!);
    }
    leaving[n] = end - start[n]!;
    for (let k = 0; k < staying.length; k++) list[end++] = staying[k]!;
    start[n + 1] = end;
  }
  return { start, list, leaving };
}

function widened(list: Int32Array, atLeast: number): Int32Array<ArrayBuffer> {
  const wider = new Int32Array(2 * list.length + atLeast);
  wider.set(list);
  return wider;
}

/** First and last place, in the order of elements, at which each group is held; never within reach for retained ones. */
function groupRanges(groups: UnknownGroups, order: Int32Array): { lowest: Int32Array; highest: Int32Array } {
  const lowest = new Int32Array(groups.size.length).fill(order.length);
  const highest = new Int32Array(groups.size.length);
  for (let place = 0; place < order.length; place++) {
    const e = order[place]!;
    for (let k = groups.start[e]!; k < groups.start[e + 1]!; k++) {
      const g = groups.list[k]!;
      if (place < lowest[g]!) lowest[g] = place;
      highest[g] = groups.retained[g] === 1 ? order.length : place;
    }
  }
  return { lowest, highest };
}

function numberUnknowns(
  groups: UnknownGroups,
  { start, list, leaving }: Meetings,
): { first: Int32Array; unknowns: number; retained: number } {
  const first = new Int32Array(groups.size.length).fill(-1);
  let unknowns = 0;
  const number = (g: number): void => {
    first[g] = unknowns;
    unknowns += groups.size[g]!;
  };
  for (let n = 0; n < leaving.length; n++) {
    for (let k = start[n]!; k < start[n]! + leaving[n]!; k++) number(list[k]!);
  }
  const eliminated = unknowns;
  const root = leaving.length - 1;
  const kept = list.slice(start[root]! + leaving[root]!, start[root + 1]!).sort();
  for (const g of kept) number(g);
  return { first, unknowns, retained: unknowns - eliminated };
}

interface Rows {
  readonly rowStart: Int32Array;
  readonly rows: Int32Array;
  readonly leaving: Int32Array;
}

/** From groups to single unknowns; those that stay sorted by their turn, so that a child's lower triangle lands in its parent's. */
function expandRows(groups: UnknownGroups, meetings: Meetings, first: Int32Array, unknowns: number): Rows {
  const { start, list } = meetings;
  const fronts = meetings.leaving.length;
  const sizeAt = new Int32Array(unknowns);
  for (let g = 0; g < first.length; g++) if (first[g]! >= 0) sizeAt[first[g]!] = groups.size[g]!;
  let total = 0;
  for (let k = 0; k < start[fronts]!; k++) total += groups.size[list[k]!]!;
  const rows = new Int32Array(total);
  const rowStart = new Int32Array(fronts + 1);
  const leaving = new Int32Array(fronts);
  let end = 0;
  for (let n = 0; n < fronts; n++) {
    const turns = list.subarray(start[n]!, start[n + 1]!);
    for (let k = 0; k < turns.length; k++) turns[k] = first[turns[k]!]!;
    const leavingGroups = meetings.leaving[n]!;
    turns.subarray(leavingGroups).sort();
    for (let k = 0; k < turns.length; k++) {
      if (k === leavingGroups) leaving[n] = end - rowStart[n]!;
      const turn = turns[k]!;
      for (let i = 0; i < sizeAt[turn]!; i++) rows[end++] = turn + i;
    }
    if (turns.length === leavingGroups) leaving[n] = end - rowStart[n]!;
    rowStart[n + 1] = end;
  }
  return { rowStart, rows, leaving };
}

/** Walks through the elimination once, counting. The stack holds finished Schur complements and the front at work on top. */
function measure(dissection: Dissection, { rowStart, leaving }: Rows) {
  const fronts = leaving.length;
  const factorStart = new Int32Array(fronts);
  let factorSize = 0;
  let stackSize = 0;
  let largestFront = 0;
  const bottom = new Int32Array(fronts);
  let top = 0;
  for (let n = 0; n < fronts; n++) {
    const size = rowStart[n + 1]! - rowStart[n]!;
    const stays = size - leaving[n]!;
    factorStart[n] = factorSize;
    factorSize += size * leaving[n]!;
    stackSize = Math.max(stackSize, top + size * size);
    largestFront = Math.max(largestFront, size);
    bottom[n] = dissection.left[n]! < 0 ? top : bottom[dissection.left[n]!]!;
    top = bottom[n]! + stays * stays;
  }
  return { factorStart, factorSize, stackSize, largestFront };
}
