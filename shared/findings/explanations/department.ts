/** What goes wrong in the file of a department, with an example of each. */
import type { DepartmentCode } from '../department-codes.ts';
import { type Explanation, lines } from './explanation.ts';

export const departmentExplanations: Readonly<Record<DepartmentCode, Explanation>> = {
  'department-yaml': {
    why: 'Nothing in the file can be relied on, so all sheets are examined as if there were none.',
    from: 'department',
    wrong: '- headings: brackets',
    right: lines('style:', '  headings: brackets'),
    allow: null,
  },
  'department-key': {
    why: 'A key that is not known decides nothing: the sheets are examined as is usual, though the department has said something else.',
    from: 'department',
    wrong: lines('severites:', '  percent-space: warning'),
    right: lines('severities:', '  percent-space: warning'),
    allow: null,
  },
  'department-value': {
    why: 'The value is left out and what is usual stays, though the department has said something else.',
    from: 'department',
    wrong: lines('style:', '  headings: bracket'),
    right: lines('style:', '  headings: brackets'),
    allow: null,
  },
  'severity-fixed': {
    why: 'Where something could not be read, no word of a department makes it readable; and a finding that says “no practical for pupils” stays what it is.',
    from: 'department',
    wrong: lines('severities:', '  insert-unknown: note'),
    right: lines('severities:', '  percent-space: note'),
    allow: null,
  },
  'limit-source': {
    why: 'A limit is taken on somebody’s word. Whoever reads the sheet next year has to find whose, so until it is named the usual limit stays.',
    from: 'department',
    wrong: lines('limits:', '  touch-dc:', '    limit: 30 V'),
    right: lines(
      'limits:',
      '  touch-dc:',
      '    limit: 30 V',
      '    source: Elmbridge School, laboratory handbook, page 4',
    ),
    allow: null,
  },
  'limit-looser': {
    why: 'More is allowed than other schools allow. The department may have good reason to; prints for staff say so, so that nobody takes it for the usual limit.',
    from: 'department',
    wrong: lines(
      'limits:',
      '  touch-dc:',
      '    limit: 60 V',
      '    source: Elmbridge School, laboratory handbook, page 4',
    ),
    right: lines(
      'limits:',
      '  touch-dc:',
      '    limit: 30 V',
      '    source: Elmbridge School, laboratory handbook, page 4',
    ),
    allow: null,
  },
};
