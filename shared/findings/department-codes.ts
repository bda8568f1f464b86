import type { CatalogueEntry } from './entry.ts';

/** Findings about the file of a department, `department.yaml`. Their severity is not the department's to set. */
export const departmentCodes = {
  'department-yaml': { severity: 'error', meaning: 'A department file that is not YAML.' },
  'department-key': { severity: 'warning', meaning: 'A key of the department file that is not known.' },
  'department-value': {
    severity: 'error',
    meaning: 'A value of the department file that cannot be taken.',
  },
  'severity-fixed': {
    severity: 'error',
    meaning: 'A severity for a finding that keeps its own: a stop, or an error of reading.',
  },
  'limit-source': { severity: 'error', meaning: 'A limit of the department without its source.' },
  'limit-looser': {
    severity: 'note',
    meaning: 'A limit of the department that allows more than is usual. Prints for staff say so too.',
  },
} as const satisfies Record<string, CatalogueEntry>;

export type DepartmentCode = keyof typeof departmentCodes;
