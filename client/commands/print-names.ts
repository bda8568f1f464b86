/** Names of the files that a sheet is printed to. */

/** `sheets/bars.md` prints as `bars-pupils.html`. */
export function printName(path: string, suffix: string): string {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return `${name.replace(/(?<=.)\.(md|markdown)$/iu, '')}-${suffix}.html`;
}
