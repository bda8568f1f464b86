/** Which addresses a printed sheet may carry: web pages and places relative to itself. */

/** The address as written, or null: any scheme but http and https is refused, however it is spelt. */
export function allowedAddress(written: string): string | null {
  // Browsers drop blanks and control characters before they look for a scheme.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const bare = written.replace(/[\u0000-\u0020\u007f-\u00a0\u2028\u2029]/gu, '');
  const scheme = /^([^/?#]*?):/u.exec(bare)?.[1];
  if (scheme === undefined || /^https?$/iu.test(scheme)) return written;
  return null;
}
