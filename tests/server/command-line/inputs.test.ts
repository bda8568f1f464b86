/** What may be typed behind a sub-command: files, folders, globs; which of them are read, in which order, and what is refused. */
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readInputs } from '../../../server/command-line/inputs.ts';
import { refuseSameNames, stemOf } from '../../../server/command-line/print.ts';
import { bars, type Folder, folder } from './program.ts';

const namesIn = ({ path }: Folder, ...named: string[]): string[] =>
  readInputs(named, { folder: path, readStandardInput: () => Buffer.alloc(0) }).map(({ name }) =>
    name.replaceAll('\\', '/'),
  );

describe('folders', () => {
  it('give the sheets in them, sorted, without what is hidden or belongs to packages', () => {
    const here = folder({
      'b/more.markdown': bars,
      'b/LOUD.MD': bars,
      'a.md': bars,
      'notes.md': '# Notes\n',
      'bars.txt': bars,
      '.hidden/x.md': bars,
      'node_modules/p/x.md': bars,
    });
    expect(namesIn(here, '.')).toEqual(['a.md', 'b/LOUD.MD', 'b/more.markdown']);
  });

  it('give a file whose fence is misspelt as well, since there is something to say about it', () => {
    expect(namesIn(folder({ 'a.md': bars.replace('```electrodes', '```electrode') }), '.')).toEqual(['a.md']);
  });

  it('may be empty, hidden, deep among packages, or end in .md', () => {
    const here = folder({ 'x.md/inner.md': bars, '.hidden/x.md': bars, 'empty/x.txt': '' });
    expect(namesIn(here, 'empty')).toEqual([]);
    expect(namesIn(here, 'x.md')).toEqual(['x.md/inner.md']);
    expect(namesIn(here, '.hidden')).toEqual(['.hidden/x.md']);
  });
});

describe('globs', () => {
  it('find Markdown alone, below hidden folders where they are named', () => {
    const here = folder({ 'a.md': bars, 'b/c.md': bars, 'a.txt': bars, '.hidden/x.md': bars });
    expect(namesIn(here, '*')).toEqual(['a.md']);
    expect(namesIn(here, '**/*.md')).toEqual(['a.md', 'b/c.md']);
    expect(namesIn(here, '.hidden/*.md')).toEqual(['.hidden/x.md']);
    expect(namesIn(here, join(here.path, 'b/*'))).toEqual(['b/c.md']);
  });

  it('are not made of the signs in the name of a file that is there', () => {
    const here = folder({ 'Räume [1]/bars {2}*.md': bars });
    expect(namesIn(here, 'Räume [1]/bars {2}*.md')).toEqual(['Räume [1]/bars {2}*.md']);
    expect(namesIn(here, 'Räume [1]')).toEqual(['Räume [1]/bars {2}*.md']);
  });
});

describe('files', () => {
  it('are read whatever their name and whatever is in them, each once', () => {
    const here = folder({ 'bars.txt': bars, 'notes.md': '# Notes\n' });
    expect(namesIn(here, 'bars.txt', 'notes.md', './bars.txt', '.')).toEqual(['bars.txt', 'notes.md']);
  });

  it('keep byte order mark and line ends', () => {
    const here = folder({ 'a.md': '\ufeffA\r\nB' });
    const [input] = readInputs(['a.md'], { folder: here.path, readStandardInput: () => Buffer.alloc(0) });
    expect(input?.text).toBe('\ufeffA\r\nB');
  });

  it('outside the working folder are shown with their whole path', () => {
    const there = join(folder({ 'a.md': bars }).path, 'a.md');
    expect(namesIn(folder(), there)).toEqual([there.replaceAll('\\', '/')]);
  });

  it.each(['missing.md', 'zz*.md', 'a.md/b.md', 'loop'])('%j cannot be had: told in one line', (name) => {
    const here = folder({ 'a.md': bars });
    symlinkSync('loop', join(here.path, 'loop'));
    expect(() => namesIn(here, name)).toThrow(`${name}: there is no such file or folder`);
  });

  it('without a name are not the whole folder', () => {
    expect(() => namesIn(folder({ 'a.md': bars }), '')).toThrow('A name is empty');
  });

  it('that are not UTF-8 are refused, but for those in a folder that are no sheets', () => {
    const here = folder({ 'sheets/bars.md': bars });
    writeFileSync(join(here.path, 'sheets/letter.md'), Buffer.from('Gr\xfc\xdfe\n', 'latin1'));
    expect(namesIn(here, 'sheets')).toEqual(['sheets/bars.md']);
    expect(() => namesIn(here, 'sheets/letter.md')).toThrow('is not UTF-8');
    writeFileSync(join(here.path, 'sheets/bars.md'), Buffer.from(bars.replace('×', '\xd7'), 'latin1'));
    expect(() => namesIn(here, 'sheets')).toThrow('is not UTF-8');
    writeFileSync(join(here.path, 'wide.md'), Buffer.from(`\ufeff${bars}`, 'utf16le'));
    expect(() => namesIn(here, 'wide.md')).toThrow('is not UTF-8');
    expect(() => namesIn(here, '*.md')).toThrow('is not UTF-8');
  });
});

describe('names of prints', () => {
  it('are those of the sheets without folder and ending', () => {
    const sheets = ['a/bars.md', 'bars.MARKDOWN', 'bars.v2.md', 'bars', '.md'];
    expect(sheets.map(stemOf)).toEqual(['bars', 'bars', 'bars.v2', 'bars', '.md']);
  });

  it.each([
    ['a/bars.md', 'b/bars.md'],
    ['bars.md', 'Bars.md'],
    ['bars.md', 'bars.markdown'],
    ['caf\u00e9.md', 'cafe\u0301.md'],
  ])('%s and %s are the same', (one, two) => {
    const input = (name: string) => ({ name, path: name, text: bars });
    expect(() => refuseSameNames([input(one), input('other.md'), input(two)])).toThrow(
      `${one} and ${two} would print to the same files`,
    );
  });
});
