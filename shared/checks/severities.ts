/** Findings as seriously as the department takes them. */
import type { Finding } from '../findings/finding.ts';
import type { Department } from '../sheet/department/department.ts';

/** A stop stays, whatever its code. */
export function withSeverities(
  findings: readonly Finding[],
  { severities }: Pick<Department, 'severities'>,
): readonly Finding[] {
  return findings.map((finding) => {
    const severity = severities.get(finding.code);
    return severity === undefined || finding.severity === 'stop' ? finding : { ...finding, severity };
  });
}
