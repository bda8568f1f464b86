/** The text of a new sheet round a block: front matter, notes on safety to be checked, prediction, method, questions, page for teachers. */

export interface Question {
  readonly ask: string;
  /** One line a mark. */
  readonly answer: readonly string[];
}

export interface SheetParts {
  readonly title: string;
  readonly aim: string;
  readonly electrodes: string;
  readonly block: string;
  readonly predict: Question;
  /** What the table of readings asks for. */
  readonly row: string;
  readonly questions: readonly Question[];
  readonly setup: string;
  /** A note on safety more, for electrodes with a point. */
  readonly point?: string;
}

export function sheetText(parts: SheetParts): string {
  const { title, aim, electrodes, block, predict, row, questions, setup, point } = parts;
  const sharp = point === undefined ? '' : `- ${point}\n`;
  return `---
title: ${title}
version: "0.1"
status: draft
groups: 12
spares: 2
minutes: 50
kit: board 1, plain paper 2, carbon paper 1, ruler 1, croc lead 3
---

# ${title}

**Aim.** ${aim}

## What you need

- board with conducting paper, carbon paper and plain paper
- ${electrodes}
- one 1.5 V cell in a holder, digital voltmeter, leads, pointed probe

::: safety
- Join the cell last and take it off first. Do not let the two clips touch. If a lead feels warm, disconnect the cell.
- Edges of cut copper stay sharp even when they are deburred. Count the pieces out and in.
${sharp}- Keep the point of the probe away from eyes, and its cap on when you do not use it. Wash your hands afterwards.

These notes are a reminder. The rules of your school and the risk assessment of whoever holds the duty come first.
:::

## Predict

${numbered(predict, 1)}
## The set-up

${block}

## Method

1. Clip the electrodes to the paper as drawn. Join the black lead of the meter to the negative metal.
2. Touch the positive metal with the probe and write down the reading. Call it *V*₀: ?{blank V}
3. Fill in the table, then look for places that read the values of the lines. Press to make a dot.
4. Join the dots of each reading with a smooth dashed line and write the value on it.

?{readings ${row} "Readings"}

## Questions

${questions.map((question, i) => numbered(question, i + 1)).join('\n')}
::: teachers
## For teachers

?{drawing ${setup} "What the class should find"}

Between the electrodes the paper is ?{resistance}; the cell gives ?{current}.
:::
`;
}

function numbered({ ask, answer }: Question, number: number): string {
  const lines = answer.map((line) => `   ${line}\n`).join('');
  return `${number}. ${ask}\n\n   ::: answer\n${lines}   :::\n`;
}
