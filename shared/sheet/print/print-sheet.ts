/** Prints a sheet for one reader: the one door of this folder. */
import type { Audience } from '../../block/tree.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Department } from '../department/department.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { planFigures } from './figure-plan.ts';
import { findingsBox } from './findings-box.ts';
import { type Html, html, joined, nothing } from './html.ts';
import { looserLimits } from './looser-limits.ts';
import { document } from './page.ts';
import { hintPage } from './passages.ts';
import { pupilsView } from './pupils.ts';
import { type Reader, renderNodes } from './render-tokens.ts';
import { drawWith } from './solved-figure.ts';
import type { Solutions } from './solved-values.ts';
import { solvedView } from './staff.ts';
import { type TokenNode, treeOf } from './token-tree.ts';
import { tell } from './told.ts';
import type { Tier, View } from './view.ts';
import { readersOf } from './withheld.ts';

export interface PrintInput {
  readonly sheet: Sheet;
  /** By number of the insert. */
  readonly bound: readonly BoundInsert[];
  /** By number of the block. */
  readonly setups: readonly Setup[];
  readonly solutions: Solutions;
  /** All findings of the sheet, for its head and to decide who may get it. */
  readonly findings: readonly Finding[];
  readonly department: Department;
}

export interface Printout {
  /** A whole document: one inline stylesheet, no scripts. */
  readonly html: string;
  /** Tiers with a copy of their own. */
  readonly tiers: readonly Tier[];
}

/** `tier`: whose copy, for pupils. Null for a reader who must not get this sheet. */
export function printSheet(input: PrintInput, audience: Audience, tier: Tier | null = null): Printout | null {
  const { sheet, findings } = input;
  if (!readersOf(sheet, findings).includes(audience)) return null;
  const reader: Reader = { sheet, view: viewFor(input, audience), tier, hints: [] };
  const { title, heading, rest } = titleOf(treeOf(sheet.tokens), reader);
  const body = renderNodes(rest, reader);
  const staff = [findingsBox(findings, sheet.source), looserLimits(input.department)];
  const top = audience === 'pupils' ? nothing : joined(staff);
  const whole = joined([top, body, hintPage(reader.hints)]);
  return {
    html: document({ front: sheet.front, audience, tier, title, heading }, whole),
    tiers: tiersOf(sheet),
  };
}

function viewFor({ sheet, bound, setups, solutions }: PrintInput, audience: Audience): View {
  const planned = { sheet, bound, setups };
  const plan = planFigures(planned, audience, drawWith(solutions, audience));
  return audience === 'pupils'
    ? pupilsView({ bound, setups }, tell(planned, solutions, plan))
    : solvedView(planned, solutions, audience, plan);
}

/** The sheet's own first heading, else the title of its front matter, else the name of its file. */
function titleOf(
  nodes: readonly TokenNode[],
  reader: Reader,
): { readonly title: string; readonly heading: Html; readonly rest: readonly TokenNode[] } {
  const { front, source } = reader.sheet;
  const first = nodes.findIndex(({ token }) => metaOf(token)?.kind !== 'sheet');
  const node = nodes[first];
  const written = front.title ?? source.name.replace(/^.*[/\\]/u, '').replace(/\.[^.]*$/u, '');
  if (node?.token.type !== 'heading_open' || node.token.tag !== 'h1') {
    return { title: written, heading: html`${written}`, rest: nodes };
  }
  const heading = renderNodes(node.children, reader);
  return {
    title: front.title ?? node.children[0]?.token.content ?? written,
    heading,
    rest: nodes.slice(first + 1),
  };
}

const tierOrder: readonly Tier[] = ['support', 'core', 'stretch'];

const tiersOf = ({ passages }: Sheet): readonly Tier[] =>
  tierOrder.filter((tier) => passages.some(({ kind }) => kind === tier));
