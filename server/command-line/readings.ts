/** `papervolt readings`: the solved numbers of one sheet as JSON or CSV. */
import { type Examination, type PointReading, unsolvedReadings } from '../../shared/index.ts';
import { Examiner } from './examine.ts';
import { readInputs } from './inputs.ts';
import { emptyLines, findingLines, findingRecords, ofSheet, statusOf } from './report.ts';
import { CommandFailure, type ExitStatus, type Shell } from './shell.ts';

export interface ReadingsOptions {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function readings(named: readonly string[], options: ReadingsOptions, shell: Shell): ExitStatus {
  if (options.json && options.csv) throw new CommandFailure('Choose one of --json and --csv.');
  const inputs = readInputs(named, shell, options.stdinName);
  const [input] = inputs;
  if (!input || inputs.length > 1)
    throw new CommandFailure(`Name exactly one sheet; ${inputs.length} are named.`);
  const examiner = new Examiner(shell);
  const examination = examiner.examine(input);
  for (const one of examiner.departments)
    for (const line of findingLines(one, shell.sayColors)) shell.say(line);
  if (options.csv) {
    for (const line of csvLines(examination)) shell.result(line);
    for (const line of findingLines(ofSheet(examination), shell.sayColors)) shell.say(line);
  } else {
    shell.result(JSON.stringify(readingsRecord(examination), null, 2));
  }
  for (const line of emptyLines([examination])) shell.say(line);
  return statusOf([...examiner.departments, examination], options.strict ?? false);
}

function readingsRecord(examination: Examination): unknown {
  return {
    sheet: examination.sheet.source.name,
    findings: findingRecords(ofSheet(examination)),
    setups: setupReadings(examination),
  };
}

function setupReadings({ setups, solutions }: Examination) {
  return setups.map((setup) => solutions.get(setup.block)?.readings ?? unsolvedReadings(setup));
}

const pointColumns = [
  'x_mm',
  'y_mm',
  'potential_V',
  'reading_V',
  'strength_x_V_per_m',
  'strength_y_V_per_m',
  'source_resistance_ohm',
  'uncertainty_V',
];

/** One line a probe and row point; an empty cell where a value does not apply. */
function csvLines(examination: Examination): readonly string[] {
  const lines = [['setup', 'kind', 'name', 'distance_mm', ...pointColumns].join(',')];
  for (const setup of setupReadings(examination)) {
    for (const probe of setup.probes) lines.push(csvLine([setup.name, 'probe', probe.name, null], probe));
    for (const row of setup.rows) {
      for (const point of row.points)
        lines.push(csvLine([setup.name, 'row', row.name, point.distance_mm], point));
    }
  }
  return lines;
}

function csvLine(head: readonly (string | number | null)[], point: PointReading): string {
  const [x, y] = point.strength_V_per_m ?? [null, null];
  const cells = [
    ...head,
    point.x_mm,
    point.y_mm,
    point.potential_V,
    point.reading_V,
    x,
    y,
    point.source_resistance_ohm,
    point.uncertainty_V,
  ];
  return cells.map((cell) => (cell === null ? '' : String(cell))).join(',');
}
