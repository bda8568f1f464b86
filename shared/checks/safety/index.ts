/** The safety of a sheet as far as it can be read: notes that are missing, stops, review. The list is not complete. */
import type { Rule } from '../rule.ts';
import { cellChecks } from './cells.ts';
import type { Scene } from './hazard.ts';
import { missingNotes } from './missing-notes.ts';
import { readSafetyText } from './reading/safety-text.ts';
import { remarks } from './remarks.ts';
import { reviewChecks } from './review.ts';
import { sourceStops } from './sources.ts';
import { voltageStops } from './voltage.ts';

export const safetyNotes: Rule = (subject) => {
  const { sheet } = subject;
  const { audience } = sheet.front;
  const scene: Scene = {
    ...subject,
    text: readSafetyText(sheet),
    language: sheet.front.language,
    readersOf({ block }) {
      const readers = sheet.blocks[block]?.readers ?? [];
      return audience === null ? readers : readers.filter((reader) => reader === audience);
    },
  };
  return [voltageStops, sourceStops, cellChecks, missingNotes, reviewChecks, remarks].flatMap((check) =>
    check(scene),
  );
};
