/** `papervolt explain`: what a finding means, why it matters, how it looks wrong and right, and how it is allowed. */
import { nearest, type Told, toldFamilies } from '../../shared/index.ts';
import { CommandFailure, type ExitStatus, type Shell } from './shell.ts';

export interface ExplainOptions {
  readonly json?: boolean;
}

/** Without a code, all of them by what they are about. */
export function explain(codes: readonly string[], options: ExplainOptions, shell: Shell): ExitStatus {
  const asked = codes.map(toldOf);
  if (options.json) {
    const listed = codes.length === 0 ? toldFamilies().flatMap(({ told }) => told) : asked;
    shell.result(JSON.stringify(listed.map(recordOf), null, 2));
  } else if (codes.length === 0) for (const line of listLines()) shell.result(line);
  else shell.result(asked.map((told) => explanationLines(told).join('\n')).join('\n\n'));
  return 0;
}

function toldOf(code: string): Told {
  const all = toldFamilies().flatMap(({ told }) => told);
  const found = all.find((told) => told.code === code);
  if (found !== undefined) return found;
  const meant = nearest(
    code,
    all.map((told) => told.code),
  );
  const question = meant.length === 0 ? 'papervolt explain lists them all.' : `${meant.join(' or ')}?`;
  throw new CommandFailure(`No finding has the code ${code}: ${question}`);
}

/** As `--json` prints it. Keys that do not apply are null. */
function recordOf({ code, severity, meaning, why, wrong, right, department, source, allowance }: Told) {
  const allow = allowance.kind === 'line' ? allowance.line : null;
  return { code, severity, meaning, why, wrong, right, department: department ?? null, source, allow };
}

function listLines(): readonly string[] {
  return toldFamilies().flatMap(({ about, told }, index) => [
    ...(index === 0 ? [] : ['']),
    about,
    ...told.map(({ code, severity, meaning }) => `  ${code.padEnd(26)} ${severity.padEnd(8)} ${meaning}`),
  ]);
}

function explanationLines(told: Told): readonly string[] {
  const { code, severity, meaning, why, wrong, right, department, source, allowance } = told;
  const allowed =
    allowance.kind === 'line'
      ? ['To allow it, with a reason, on the line above:', ...indented(allowance.line)]
      : wrapped(allowance.because);
  return [
    `${code} (${severity})`,
    ...wrapped(meaning),
    '',
    ...wrapped(why),
    '',
    ...example('Where department.yaml says:', department ?? null),
    ...example('Wrong:', wrong),
    ...example('Right:', right),
    ...wrapped(`Source: ${source}.`),
    '',
    ...allowed,
  ];
}

const example = (heading: string, text: string | null): readonly string[] =>
  text === null ? [] : [heading, ...indented(text), ''];

const indented = (text: string): readonly string[] => text.split('\n').map((line) => `    ${line}`.trimEnd());

/** Columns that every terminal has. */
const width = 80;

/** Words on lines of at most `width` characters, a longer word on a line of its own. */
function wrapped(text: string): readonly string[] {
  const broken: string[] = [];
  for (const word of text.split(/\s+/u)) {
    const last = broken.at(-1);
    if (last !== undefined && [...`${last} ${word}`].length <= width) broken[broken.length - 1] += ` ${word}`;
    else broken.push(word);
  }
  return broken;
}
