/** Documents that the front matter points to. */
import { expect, test } from 'vitest';
import { draftSheet } from '../../shared/checks/examine.ts';
import { linksOf } from '../../shared/editing/links.ts';

test.each([
  ['risk-assessment: ../assessments/field%20mapping.pdf', '../assessments/field%20mapping.pdf'],
  ['risk-assessment: "assessments/field.docx" # of last year', 'assessments/field.docx'],
  ['risk-assessment: https://intranet.example/ra/17', 'https://intranet.example/ra/17'],
  ['safety: kept-in "notes.md#power-packs"', 'notes.md#power-packs'],
  ["safety: kept-in 'Laboratory notes.pdf'", 'Laboratory notes.pdf'],
  ['safety: kept-in notes.md', 'notes.md'],
])('%s', (line, target) => {
  const text = `---\r\ntitle: A\r\n${line}\r\n---\r\n\r\n\`\`\`electrodes\r\n\`\`\`\r\n`;
  const links = linksOf(draftSheet({ name: 'sheet.md', text }).sheet);
  expect(links.map((link) => [link.target, text.slice(link.span.from, link.span.to)])).toEqual([
    [target, target],
  ]);
});

test.each([
  'risk-assessment: RA 12.b, in the prep room',
  'safety: kept-in "Laboratory notes"',
  'risk-assessment: javascript:alert(1)',
  'risk-assessment: /etc/notes.md',
  'risk-assessment: C:\\notes.pdf',
  'title: notes.md',
  'author: https://intranet.example/',
])('no link: %s', (line) => {
  const text = `---\n${line}\n---\n\nrisk-assessment: notes.md\n\n\`\`\`electrodes\n\`\`\`\n`;
  expect(linksOf(draftSheet({ name: 'sheet.md', text }).sheet)).toEqual([]);
});
