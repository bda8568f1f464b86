/** Prints of an open text, made by the solving thread. */
import type { CancellationToken } from 'vscode-languageserver';
import { editing } from '../../shared/index.ts';
import type { Room } from './house.ts';
import { changed, refused } from './reply.ts';

export const printing: Room = (connection, { read, sheets, solver }) => {
  connection.onRequest(
    editing.messages.print,
    async (
      { textDocument }: editing.PrintAsk,
      token: CancellationToken,
    ): Promise<editing.PrintAnswer | null> => {
      const sheet = read(textDocument.uri);
      if (sheet === null) return null;
      const wanted = (): boolean => !token.isCancellationRequested && sheets.isCurrent(sheet);
      token.onCancellationRequested(() => solver.advance());
      const ask = { name: sheet.draft.sheet.source.name, text: sheet.text };
      const answer = await solver.ask({ kind: 'print', ask, wanted });
      if (answer === 'dropped') return changed();
      return answer === 'lost' ? refused('The solver stopped over this sheet.') : answer.result;
    },
  );
};
