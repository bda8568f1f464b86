/** The walkthrough and the icon: each step has its picture, drawn by the core as it is now, its words, and commands that are there. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');

interface Step {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly media: { readonly svg: string; readonly altText: string };
  readonly completionEvents: readonly string[];
}
interface Manifest {
  readonly icon: string;
  readonly contributes: {
    readonly commands: readonly { readonly command: string }[];
    readonly walkthroughs: readonly {
      readonly title: string;
      readonly description: string;
      readonly steps: readonly Step[];
    }[];
  };
}
const manifest: Manifest = JSON.parse(read('package.json'));
const strings: Readonly<Record<string, string>> = JSON.parse(read('package.nls.json'));
const said = (key: string): string => strings[key.replaceAll('%', '')] ?? '';
const commands = manifest.contributes.commands.map(({ command }) => command);
const steps = manifest.contributes.walkthroughs.flatMap((walkthrough) => walkthrough.steps);
const pictures: Readonly<Record<string, string>> = JSON.parse(
  execFileSync(process.execPath, [join(root, 'build/walkthrough.mjs'), '--print'], { encoding: 'utf8' }),
);

it('has five steps, and a picture for each', () => {
  expect(steps).toHaveLength(5);
  expect(steps.map(({ media }) => media.svg.replace('./', '')).sort()).toEqual(Object.keys(pictures).sort());
});

describe.each(steps)('step $id', ({ title, description, media, completionEvents }) => {
  it('has its words', () => {
    for (const key of [title, description, media.altText]) expect(said(key).length, key).toBeGreaterThan(8);
  });

  it('has a picture that build/walkthrough.mjs draws', () => {
    const file = media.svg.replace('./', '');
    expect(read(file) === pictures[file], file).toBe(true);
  });

  it('asks for commands that are there', () => {
    const events = completionEvents.map((event) => event.replace('onCommand:', ''));
    const buttons = [...said(description).matchAll(/\]\(command:([\w.]+)\)/g)].map(([, id = '']) => id);
    expect(buttons.length).toBeGreaterThan(0);
    expect([...events, ...buttons].filter((id) => !commands.includes(id))).toEqual([]);
    expect(buttons).toEqual(expect.arrayContaining(events));
  });
});

test('pictures need no style that a strict page refuses', () => {
  for (const svg of Object.values(pictures)) {
    expect(svg).not.toMatch(/\bstyle=|<style|<script|href=/);
    // The page for walkthroughs moves every element of this name to its middle.
    expect(svg.match(/<svg/g)).toHaveLength(1);
  }
});

test('the icon is a picture of 256 by 256', () => {
  const png = readFileSync(join(root, manifest.icon));
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([256, 256]);
});
