/** What is known of an electrode, a probe or a row of a setup, in words. */
import { describePiece, point } from '../drawing/describe.ts';
import { readingText } from '../drawing/reading-text.ts';
import { millimetres } from '../drawing/values.ts';
import { printQuantity } from '../quantity/print.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Connection, Electrode, Probe, Row, Setup } from '../setup/setup.ts';
import { currentText, potentialText, sourceText, strengthText } from './amounts.ts';

/** Markdown; null where the setup has nothing of this name. */
export function namedHelp(name: string, setup: Setup, solved: SolvedSetup | null): string | null {
  const electrode = setup.electrodes.find((one) => one.name === name);
  if (electrode !== undefined) return electrodeHelp(electrode, setup, solved);
  const probe = setup.probes.find((one) => one.name === name);
  if (probe !== undefined) return probeHelp(probe, setup, solved);
  const row = setup.rows.find((one) => one.name === name);
  return row === undefined ? null : rowHelp(row, setup, solved);
}

function electrodeHelp(electrode: Electrode, setup: Setup, solved: SolvedSetup | null): string {
  const reading = solved?.readings.electrodes.find(({ name }) => name === electrode.name);
  return listOf(`electrode **${electrode.name}**: ${electrode.pieces.map(describePiece).join('; ')}`, [
    ['reaches', extentText(electrode)],
    ['terminal', terminalText(electrode)],
    ['potential', reading === undefined ? null : potentialText(reading, setup)],
    ['current into the paper', reading === undefined ? null : currentText(reading)],
  ]);
}

/** The box around its metal on the paper. */
function extentText({ box: { x0, x1, y0, y1 } }: Electrode): string {
  const [left, right, bottom, top] = [x0, x1, y0, y1].map((mm) => Math.round(mm * 100) / 100 + 0);
  return `x from ${left} to ${right}, y from ${bottom} to ${top} mm`;
}

function terminalText({ connection, joinedTo, partOf }: Electrode): string | null {
  if (partOf !== null) return `stands on ${partOf}`;
  if (joinedTo !== null) return `joined to ${joinedTo}`;
  return connection === null ? null : connectionText(connection);
}

function connectionText(connection: Connection): string {
  return connection.kind === 'held'
    ? `held at ${printQuantity(connection.potential_V, 'potential')}`
    : connection.kind;
}

function probeHelp(probe: Probe, setup: Setup, solved: SolvedSetup | null): string {
  const reading = solved?.readings.probes.find(({ name }) => name === probe.name);
  const place = `${point(probe.at)}${probe.on === null ? '' : `, on ${probe.on}`}`;
  return listOf(`probe **${probe.name}** at ${place}`, [
    ['reading', reading === undefined ? null : readingText(reading, setup)],
    ['strength', reading === undefined ? null : strengthText(reading, setup)],
    ['source resistance', reading === undefined ? null : sourceText(reading)],
  ]);
}

/** The most readings that are listed. */
const mostReadings = 40;

function rowHelp(row: Row, setup: Setup, solved: SolvedSetup | null): string {
  const reading = solved?.readings.rows.find(({ name }) => name === row.name);
  const points = (reading?.points ?? []).slice(0, mostReadings);
  const cells = points.map((at) => `| ${millimetres(at.distance_mm)} | ${readingText(at, setup) ?? ''} |`);
  const table = cells.length === 0 ? '' : `\n\n| distance | reading |\n| --- | --- |\n${cells.join('\n')}`;
  const left = (reading?.points.length ?? 0) - points.length;
  return `row **${row.name}** of ${row.points.length} readings${table}${left > 0 ? `\n\n… and ${left} more` : ''}`;
}

function listOf(head: string, facts: readonly (readonly [string, string | null])[]): string {
  const told = facts.filter(([, value]) => value !== null).map(([what, value]) => `- ${what}: ${value}`);
  return told.length === 0 ? head : `${head}\n\n${told.join('\n')}`;
}
