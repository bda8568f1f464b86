/** A short key for a long text: 64 bits as hexadecimal digits, the same on every machine. Not for secrets. */

const [seedA, seedB] = [0x2545f491, 0x6c078965];
/** Odd multipliers, by which every bit of a letter reaches all higher ones. */
const [timesA, timesB] = [0x9e3779b1, 0x85ebca77];

export function fingerprint(text: string): string {
  let [a, b] = [seedA, seedB];
  for (let i = 0; i < text.length; i++) {
    const letter = text.charCodeAt(i);
    a = Math.imul(a ^ letter, timesA);
    a ^= a >>> 15;
    b = Math.imul(b ^ letter, timesB) + i;
    b ^= b >>> 13;
  }
  // Each half is stirred by the other, so that it depends on all that came before.
  const first = Math.imul(a ^ (b >>> 16), timesB);
  const second = Math.imul(b ^ (first >>> 15), timesA);
  return hexadecimal(first ^ (second >>> 13)) + hexadecimal(second ^ a);
}

const hexadecimal = (half: number): string => (half >>> 0).toString(16).padStart(8, '0');
