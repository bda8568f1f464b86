/** The file of a department is found above the sheets, holds for all of them, and is told of once. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { departmentFor } from '../../../shared/index.ts';
import { bars, folder } from './program.ts';

const slipped = bars.replace('The middle', 'At 1.5V the middle');
const strict = 'severities: { unit-space: error }\n';

describe('a department’s file', () => {
  it('holds for the sheets below it; the nearest one counts', () => {
    const here = folder({
      'department.yaml': strict,
      'a/bars.md': slipped,
      'b/department.yaml': 'review: 6 months\n',
      'b/c/bars.md': slipped,
    });
    const { status, stdout } = here.run(['check', '.']);
    expect(status).toBe(1);
    expect(stdout.replaceAll('\\', '/')).toMatch(
      /^a\/bars\.md:\d+:\d+: error unit-space .*\n(?: .*\n)*b\/c\/bars\.md:\d+:\d+: warning unit-space /,
    );
  });

  it('holds for a sheet from standard input under its name', () => {
    const here = folder({ 'a/department.yaml': strict });
    expect(here.run(['check', '--stdin-name', 'a/typed.md'], slipped).status).toBe(1);
    expect(here.run(['check', '--stdin-name', 'typed.md'], slipped).status).toBe(0);
  });

  it('is told of once, under its own name, and an error in it counts', () => {
    const here = folder({ 'a.md': bars, 'b.md': bars, 'department.yaml': 'style: { percent: perhaps }\n' });
    const line = 'department.yaml:1:19: error department-value `percent` is spaced or joined.\n';
    expect(here.run(['check', '.'])).toMatchObject({ status: 1, stdout: line });
    const { sheets, departments } = JSON.parse(here.run(['check', '--json', '.']).stdout);
    expect(sheets).toHaveLength(2);
    expect(departments).toMatchObject([
      { department: 'department.yaml', findings: [{ code: 'department-value', line: 1, column: 19 }] },
    ]);
    for (const args of [
      ['print', '.', '--out', 'prints'],
      ['readings', 'a.md'],
    ]) {
      const ran = here.run(args);
      expect(ran.status).toBe(1);
      expect(ran.stderr.split(line)).toHaveLength(2);
    }
  });

  it('a limit that allows more than is usual stays in view', () => {
    const text = 'limits: { heat: { limit: 20 mW/cm², source: trial of the department } }\n';
    const here = folder({ 'bars.md': bars, 'department.yaml': text });
    const ran = here.run(['check', 'bars.md']);
    expect(ran.status).toBe(0);
    expect(ran.stdout).toMatch(/^department\.yaml:1:26: note limit-looser 20 mW\/cm² are more than is usual/);
    here.run(['print', 'bars.md', '--out', 'prints']);
    expect(here.read('prints/bars-technicians.html')).toContain('by trial of the department; usual are 10');
    expect(here.read('prints/bars-pupils.html')).not.toContain('trial of the department');
  });

  it('a folder of that name is none', () => {
    expect(folder({ 'department.yaml/x.txt': '', 'bars.md': bars }).run(['check', 'bars.md']).status).toBe(0);
  });
});

it('an editor finds the same file', async () => {
  const uri = (name: string): string => pathToFileURL(join('/lessons', name)).href;
  const asked: string[] = [];
  const files = {
    read: async (name: string) => {
      asked.push(name);
      return name === uri('department.yaml') ? strict : null;
    },
  };
  const found = await departmentFor(files, uri('year 12/bars.md'));
  expect(found?.department.severities.get('unit-space')).toBe('error');
  expect(asked).toEqual([uri('year 12/department.yaml'), uri('department.yaml')]);
  expect(await departmentFor(files, 'untitled:Untitled-1')).toBe(null);
  asked.length = 0;
  expect(await departmentFor(files, 'file:///c%3A/bars.md')).toBe(null);
  expect(await departmentFor(files, 'vscode-vfs://host/bars.md')).toBe(null);
  expect(asked).toEqual(['file:///c%3A/department.yaml', 'vscode-vfs://host/department.yaml']);
});
