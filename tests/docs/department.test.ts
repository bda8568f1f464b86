/** The page on a department's file and its schema hold every key that is read, and say of it what is true. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { type UsualLimit, usualLimits } from '../../shared/sheet/department/limits.ts';
import {
  departmentKeys,
  readDepartment,
  settableCodes,
} from '../../shared/sheet/department/read-department.ts';
import { type StyleChoice, styleChoices } from '../../shared/sheet/department/style.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const page = read('docs/department.md');
const limits: readonly (readonly [string, UsualLimit])[] = Object.entries(usualLimits);
const style: readonly (readonly [string, StyleChoice])[] = Object.entries(styleChoices);

interface Schema {
  readonly properties: Readonly<Record<string, Schema>>;
  readonly additionalProperties: boolean;
  readonly enum: readonly string[];
  readonly pattern: string;
  readonly required: readonly string[];
}

describe('docs/department.md', () => {
  it('has an example that is read, with a limit that is looser than usual in it', () => {
    const text = /^```yaml\n(severities:[\s\S]*?)^```$/m.exec(page)?.[1] ?? '';
    const { department, findings } = readDepartment({ name: 'department.yaml', text });
    expect(findings.map(({ code }) => code)).toEqual(['limit-looser']);
    expect(department.severities.size).toBe(2);
    expect(Object.values(department.style)).not.toContain(null);
    for (const key of departmentKeys) expect(text).toMatch(new RegExp(`^${key}:`, 'm'));
  });

  test.each(limits)('tells the limit %s', (name, { meaning, value, unit, source, most }) => {
    const end = most === undefined ? '–' : `${most.value} ${unit}`;
    const of = meaning.replace(/\.$/, '');
    expect(page).toContain(`\n| \`${name}\` | ${of} | ${value} ${unit} | ${end} | ${source} |\n`);
  });

  test.each(style)('tells the choice of %s', (name, { meaning, ways }) => {
    const told = Object.entries(ways).map(([word, example]) => `\`${word}\`: ${example}`);
    expect(page).toContain(`\n| \`${name}\` | ${meaning.replace(/\.$/, '')} | ${told.join(' | ')} |\n`);
  });
});

describe('docs/department.schema.json', () => {
  const text = read('docs/department.schema.json');
  const schema: Schema = JSON.parse(text);
  const { severities, limits: below, style: choices, review } = schema.properties;

  it('is what build/department-schema.mjs writes', () => {
    const script = join(root, 'build/department-schema.mjs');
    expect(execFileSync(process.execPath, [script, '--print'], { encoding: 'utf8' })).toBe(text);
  });

  it('has the keys that are read and no others', () => {
    const keysOf = (one: Schema | undefined): readonly string[] => Object.keys(one?.properties ?? {});
    expect(keysOf(schema)).toEqual(departmentKeys);
    expect(keysOf(severities)).toEqual(settableCodes);
    expect(keysOf(below)).toEqual(Object.keys(usualLimits));
    expect(keysOf(choices)).toEqual(Object.keys(styleChoices));
    for (const one of [schema, severities, below, choices]) expect(one?.additionalProperties).toBe(false);
  });

  test.each(limits)('takes of %s what is read, and no other unit', (name, { value, unit }) => {
    const { properties, required } = below?.properties[name] ?? {};
    expect(required).toEqual(['limit', 'source']);
    for (const limit of [`${value} ${unit}`, `${value}${unit}`, `${value} kg`, `${value}`, 'none']) {
      const file = `limits: { ${name}: { limit: ${limit}, source: x } }`;
      const isRead = readDepartment({ name: 'department.yaml', text: file }).findings.length === 0;
      expect(new RegExp(properties?.limit?.pattern ?? '').test(limit), limit).toBe(isRead);
    }
  });

  it('takes of review what is read', () => {
    for (const written of ['12 months', '1 year', '2years', '12 weeks', 'yearly']) {
      const isRead =
        readDepartment({ name: 'department.yaml', text: `review: ${written}` }).findings.length === 0;
      expect(new RegExp(review?.pattern ?? '').test(written), written).toBe(isRead);
    }
  });
});
