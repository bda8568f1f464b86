/** What the drawing panel beside the editor asks: the drawing of a block, readings of its paper, and what a move would come to. */
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { askOf, type Draft, editing, type TextEdit } from '../../shared/index.ts';
import type { House, Room } from './house.ts';
import { editsOf, offsetOf, positionOf } from './places.ts';
import { type Problem, problemFor } from './problem.ts';
import type { OpenSheet } from './sheets.ts';
import { Shelf } from './shelf.ts';
import type { Pictured } from './tasks.ts';

const { messages } = editing;

export const panel: Room = (connection, house) => {
  const desk = new PanelDesk(house);
  const on =
    <P extends { readonly textDocument: { readonly uri: string } }, R>(
      reply: (sheet: OpenSheet, params: P, token: CancellationToken) => R,
    ) =>
    (params: P, token: CancellationToken): R | null => {
      const sheet = house.read(params.textDocument.uri);
      return sheet === null ? null : reply(sheet, params, token);
    };
  connection.onRequest(
    messages.panel,
    on((sheet, { position }: editing.TextPlace, token) => desk.panel(sheet, position, token)),
  );
  connection.onRequest(
    messages.slip,
    on((sheet, ask: editing.PointAsk) => desk.slip(sheet, ask)),
  );
  connection.onRequest<editing.Moved | null, void>(
    messages.move,
    on((sheet, ask: editing.MoveAsk, token) => desk.move(sheet, ask, token)),
  );
  connection.onRequest<editing.Moved | null, void>(
    messages.addProbe,
    on((sheet, ask: editing.PointAsk) => desk.addProbe(sheet, ask)),
  );
  house.documents.onDidClose(() => desk.forget());
};

/** Pictures of setups as they stand in the texts; a few that have just been looked at. */
const mostPictureBytes = 4 * 2 ** 20;

class PanelDesk {
  private readonly house: House;
  private readonly pictures = new Shelf<Pictured>(mostPictureBytes);
  /** Of all moves the newest alone is worked on. */
  private newestMove = 0;

  constructor(house: House) {
    this.house = house;
  }

  /** Texts have been closed: what is still needed is drawn again. */
  forget(): void {
    this.pictures.keepOnly(() => false);
  }

  async panel(
    sheet: OpenSheet,
    position: editing.Place,
    token: CancellationToken,
  ): Promise<editing.PanelDrawing | null> {
    const block = nearestBlock(sheet.draft, offsetOf(sheet.lines, position));
    const problem = block === null ? undefined : sheet.problems[block];
    if (block === null || problem === undefined) return null;
    const wanted = this.wantedBy(token, () => this.house.sheets.isCurrent(sheet));
    const now = await this.kept(problem, wanted);
    const said = panelParts(sheet, block, now);
    const last = now.solved ? null : this.house.lastGood.of(sheet.uri, problem.setup.name);
    if (last === null) return drawingOf(now, said, false);
    const then = await this.kept(last, wanted);
    return then.solved ? drawingOf(then, said, true) : drawingOf(now, said, false);
  }

  async slip(sheet: OpenSheet, { block, x_mm, y_mm }: editing.PointAsk): Promise<editing.Slip | null> {
    const problem = sheet.problems[block];
    if (problem === undefined) return null;
    const ask = { problem, x: x_mm, y: y_mm };
    const answer = await this.house.solver.ask({ kind: 'slip', ask, wanted: () => true, when: 'now' });
    return typeof answer === 'string' ? null : answer.result;
  }

  async move(
    sheet: OpenSheet,
    { block, handle, by_mm, draw }: editing.MoveAsk,
    token: CancellationToken,
  ): Promise<editing.Moved> {
    const ticket = ++this.newestMove;
    // What an older move waits for is not wanted any more.
    this.house.solver.advance();
    const moving = editing.moveHandle(sheet.draft, block, handle, by_mm);
    if ('refusal' in moving) return moving;
    const { said } = moving;
    const edits = editsOf(sheet.lines, moving.edits);
    if (!draw) return { edits, version: sheet.version, drawing: null, handle: moving.handle, said };
    const wanted = this.wantedBy(
      token,
      () => ticket === this.newestMove && this.house.sheets.isCurrent(sheet),
    );
    const drawing = await this.supposed(sheet, block, moving.edits, wanted);
    return { edits, version: sheet.version, drawing, handle: moving.handle, said };
  }

  addProbe(sheet: OpenSheet, { block, x_mm, y_mm }: editing.PointAsk): editing.Moved {
    const moving = editing.probeLine(sheet.draft, block, { x: x_mm, y: y_mm });
    if ('refusal' in moving) return moving;
    const { handle, said } = moving;
    return { edits: editsOf(sheet.lines, moving.edits), version: sheet.version, drawing: null, handle, said };
  }

  /** The drawing of a block after edits inside it. Nothing of it is kept, and the text is not read again. */
  private async supposed(
    sheet: OpenSheet,
    block: number,
    edits: readonly TextEdit[],
    wanted: () => boolean,
  ): Promise<editing.PanelDrawing | null> {
    const setup = editing.supposedSetup(sheet.draft, block, edits);
    if (setup === null) return null;
    const setups = sheet.draft.setups.map((known, number) => (number === block ? setup : known));
    const ask = { ...askOf(sheet.draft, setup), samples: [] };
    const pictured = await this.pictured(problemFor(setup, ask), wanted);
    // Handles have the lines of the text as it stands: that is where the editor is sent to.
    const parts = panelParts({ ...sheet, draft: { ...sheet.draft, setups } }, block, pictured);
    return drawingOf(pictured, parts, false);
  }

  private async kept(problem: Problem, wanted: () => boolean): Promise<Pictured> {
    const known = this.pictures.get(problem.key);
    if (known !== null) return known;
    const pictured = await this.pictured(problem, wanted);
    if (!pictured.rough) this.pictures.put(problem.key, pictured, 2 * (pictured.picture?.svg.length ?? 0));
    return pictured;
  }

  private async pictured(problem: Problem, wanted: () => boolean): Promise<Pictured> {
    const answer = await this.house.solver.ask({ kind: 'panel', ask: { problem }, wanted });
    if (answer === 'dropped')
      throw new ResponseError(LSPErrorCodes.ContentModified, 'This is not wanted any more.');
    return answer === 'lost' ? lost : answer.result;
  }

  private wantedBy(token: CancellationToken, still: () => boolean): () => boolean {
    token.onCancellationRequested(() => this.house.solver.advance());
    return () => !token.isCancellationRequested && still();
  }
}

const lost: Pictured = {
  picture: null,
  solved: false,
  trouble: { kind: 'numerical', detail: 'the solver stopped over it' },
  rough: false,
};

/** The block at an offset, else the nearest above it, else the first; null in a text without blocks. */
function nearestBlock({ sheet }: Draft, offset: number): number | null {
  const above = sheet.blocks.filter(({ block }) => block.excerpt.span.from <= offset).length;
  return sheet.blocks.length === 0 ? null : Math.max(0, above - 1);
}

type Parts = Pick<editing.PanelDrawing, 'version' | 'block' | 'name' | 'handles' | 'message'>;

function panelParts(
  { draft, lines, version }: Pick<OpenSheet, 'draft' | 'lines' | 'version'>,
  block: number,
  pictured: Pictured,
): Parts {
  const handles = editing.handlesOf(draft, block).map(
    ({ id, kind, label, point, outlines, span }): editing.PanelHandle => ({
      id,
      kind,
      label,
      x_mm: point.x,
      y_mm: point.y,
      path: editing.handlePath(outlines),
      place: positionOf(lines, span.from),
    }),
  );
  const name = draft.setups[block]?.name ?? '';
  return { version, block, name, handles, message: editing.blockRemark(draft, block, pictured) };
}

/** Of a block without paper nothing is drawn. */
const noPicture = {
  svg: '',
  title: '',
  description: '',
  frame: { left: 0, top: 0, scale: 1 },
  paper: { width_mm: 0, height_mm: 0 },
} as const;

function drawingOf({ picture }: Pictured, parts: Parts, stale: boolean): editing.PanelDrawing {
  return { ...(picture ?? noPicture), ...parts, stale };
}
