/** Examines what was read: each sheet by the rules of its department, whose file is told of once. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  type DepartmentReading,
  departmentPlaces,
  type Examination,
  examineSheet,
  readDepartment,
} from '../../shared/index.ts';
import { type Input, kindOf, shownName, textOf } from './inputs.ts';
import { type Shell, telling } from './shell.ts';

export class Examiner {
  private readonly shell: Pick<Shell, 'folder' | 'today'>;
  /** By path; null where no file stands. */
  private readonly readings = new Map<string, DepartmentReading | null>();

  constructor(shell: Pick<Shell, 'folder' | 'today'>) {
    this.shell = shell;
  }

  /** Files of departments that sheets had, in the order in which they were met. */
  get departments(): readonly DepartmentReading[] {
    return [...this.readings.values()].filter((reading) => reading !== null);
  }

  examine({ name, path, text }: Input): Examination {
    const { today } = this.shell;
    const department = this.departmentOf(path ?? resolve(this.shell.folder, name))?.department;
    return examineSheet({ name, text }, { today, ...(department && { department }) });
  }

  private departmentOf(path: string): DepartmentReading | null {
    for (const place of departmentPlaces(pathToFileURL(path).href)) {
      const found = this.reading(fileURLToPath(place));
      if (found !== null) return found;
    }
    return null;
  }

  private reading(path: string): DepartmentReading | null {
    const known = this.readings.get(path);
    if (known !== undefined) return known;
    const name = shownName(path, this.shell.folder);
    const read = (): string => textOf(name, readFileSync(path));
    const reading = kindOf(path)?.isFile()
      ? readDepartment({ name, text: telling(name, 'cannot be read', read) })
      : null;
    this.readings.set(path, reading);
    return reading;
  }
}
