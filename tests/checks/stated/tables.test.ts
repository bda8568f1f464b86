/** Tables of expected readings. */
import { expect, it, test } from 'vitest';
import { statedNumbers } from '../../../shared/checks/stated/index.ts';
import { check } from '../../check.ts';
import { bars, findingsOf, radial } from './sheets.ts';

const checkTables = (marked: string): void =>
  check(marked, (text) =>
    findingsOf(statedNumbers, text).map((one) => ({ ...one, message: one.message.replace(/\u00a0/gu, ' ') })),
  );

// 15 mV for each mm between the bars; 1.5 V ln(80 mm/r)/ln 8 from disc to ring.
it('holds each cell of a row against the solution', () => {
  checkTables(`${bars}

Expected readings along A:

| Distance from N / mm | V / V |
| --- | --- |
| 10 | 0.15 |
| 30 | 0.55 |
       ^^^^ warning stated-table The reading there is 0.45 V by the setup, 0.10 V less than the text says.
       => | 30 | 0.45 |
| 50 | 0.75 |
| 75 | 1.22 |
       ^^^^ warning stated-table The reading there is 1.12 V
       => | 75 | 1.12 |
| 90 | 1.35 |
`);
});

it('counts from the electrode that the heading names, in any unit', () => {
  checkTables(`${bars}

::: teachers
| Distance from P / cm | V / mV |
| --- | --- |
| 1.0 | 1350 |
| 2.0 | 300 |
        ^^^ warning stated-table The reading there is 1200 mV by the setup
        => | 2.0 | 1200 |
| 5.0 | 750 |
:::
`);
});

it('knows radii', () => {
  checkTables(`${radial}

The table shows what to expect.

| r / mm | V / V |
| --- | --- |
| 20 | 1.00 |
| 30 | 0.71 |
| 40 | 0.64 |
       ^^^^ warning stated-table The reading there is 0.50 V by the setup, 0.14 V less than the text says.
       => | 40 | 0.50 |
| 60 | 0.21 |
`);
});

it('knows probes by name', () => {
  checkTables(`${bars}

::: answer
| Place | V / V |
| --- | --- |
| M | 0.80 |
      ^^^^ warning stated-table 0.75 V
      => | M | 0.75 |
| Q | 0.30 |
| P | 1.5 |
| somewhere | 0.2 |
:::
`);
});

const cells = '| 10 | 0.35 |\n| 30 | 0.55 |\n| 50 | 0.95 |';

test.each([
  ['what pupils have measured', `Readings of a group:\n\n| x / mm | V / V |\n| --- | --- |\n${cells}`],
  ['what pupils are to measure', `| x / mm | V / V |\n| --- | --- |\n${cells}`],
  ['an example', `Expected, for example:\n\n| x / mm | V / V |\n| --- | --- |\n${cells}`],
  ['another state', `Expected with the leads reversed:\n\n| x / mm | V / V |\n| --- | --- |\n${cells}`],
  ['distances beyond the row', `Expected:\n\n| x / mm | V / V |\n| --- | --- |\n${cells}\n| 130 | 2.0 |`],
  ['another quantity', `Expected:\n\n| x / mm | ΔV / V |\n| --- | --- |\n${cells}`],
  ['another electrode', `Expected:\n\n| distance from R / mm | V / V |\n| --- | --- |\n${cells}`],
  [
    'cells with more in them',
    'Expected:\n\n| x / mm | V / V |\n| --- | --- |\n| 10 | 0.35 or 0.4 |\n| 30 | about half |',
  ],
  ['a table without distances', 'Expected:\n\n| Step | V / V |\n| --- | --- |\n| 1 | 0.35 |\n| 2 | 0.55 |'],
])('says nothing of %s', (_, text) => {
  expect(findingsOf(statedNumbers, `${bars}\n\n${text}\n`)).toEqual([]);
});
