/** Finds the file of a sheet's department: `department.yaml` in the folder of the sheet or in the nearest one above. */
import { type DepartmentReading, readDepartment } from './read-department.ts';

/** What has to be known of the world outside: the text of a file, null where there is none. */
export interface DepartmentFiles {
  read(uri: string): Promise<string | null>;
}

const fileName = 'department.yaml';

/** Where it may stand, the nearest place first. `uri`: of the sheet; one that is in no folder has no department. */
export function departmentPlaces(uri: string): readonly string[] {
  // Scheme, host and drive are no folders; `untitled:` has none of them.
  const root = /^[a-z][a-z\d+.-]*:\/\/[^/]*\/(?:[a-z](?::|%3a)\/)?/iu.exec(uri)?.[0];
  if (root === undefined) return [];
  const folders = uri.slice(root.length).split('/').slice(0, -1);
  return Array.from(
    { length: folders.length + 1 },
    (_, up) => root + [...folders.slice(0, folders.length - up), fileName].join('/'),
  );
}

/** Null where no file stands. Its source has the URI for a name. */
export async function departmentFor(files: DepartmentFiles, uri: string): Promise<DepartmentReading | null> {
  for (const name of departmentPlaces(uri)) {
    const text = await files.read(name);
    if (text !== null) return readDepartment({ name, text });
  }
  return null;
}
