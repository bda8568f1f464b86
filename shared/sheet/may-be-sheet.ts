/** A quick look at a text, before anything is parsed. */

/** True where a text has a fence whose word is `electrodes` or could be a near miss of it. Others are none of our concern. */
export function mayBeSheet(text: string): boolean {
  return /(?:`{3}|~{3})[ \t]*(?=\S*d)\S{7,}/iu.test(text);
}
