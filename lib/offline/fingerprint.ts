/**
 * SHA-256 of a photograph's bytes, in hexadecimal (FIPS 180-4). The browser's own is missing on plain http in a
 * shop's network, so it is written out where it must be.
 */
export const fingerprintOf = async (bytes: ArrayBuffer): Promise<string> => {
  // Typed as always there, and missing outside a secure context.
  const own = crypto.subtle as SubtleCrypto | undefined;
  const digest =
    own === undefined ? sha256(new Uint8Array(bytes)) : new Uint8Array(await own.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
};

const PRIMES = ((): readonly number[] => {
  const found: number[] = [];
  for (let each = 2; found.length < 64; each += 1)
    if (found.every((prime) => each % prime !== 0)) found.push(each);
  return found;
})();

/** The first 32 bits of the fractional part. */
const fraction = (value: number): number => ((value - Math.floor(value)) * 2 ** 32) | 0;
const ROUNDS = PRIMES.map((prime) => fraction(Math.cbrt(prime)));
const START = PRIMES.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

const turn = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

export const sha256 = (bytes: Uint8Array): Uint8Array => {
  const state = Int32Array.from(START);
  const padded = new Uint8Array(((bytes.length + 8) >> 6) * 64 + 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor((bytes.length * 8) / 2 ** 32));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);
  const words = new Int32Array(64);
  for (let at = 0; at < padded.length; at += 64) {
    for (let i = 0; i < 16; i += 1) words[i] = view.getInt32(at + i * 4);
    for (let i = 16; i < 64; i += 1) words[i] = spread(words, i);
    compress(state, words);
  }
  const out = new DataView(new ArrayBuffer(32));
  state.forEach((word, index) => {
    out.setInt32(index * 4, word);
  });
  return new Uint8Array(out.buffer);
};

const spread = (words: Int32Array, at: number): number => {
  const early = words[at - 15] ?? 0;
  const late = words[at - 2] ?? 0;
  const a = turn(early, 7) ^ turn(early, 18) ^ (early >>> 3);
  const b = turn(late, 17) ^ turn(late, 19) ^ (late >>> 10);
  return ((words[at - 16] ?? 0) + a + (words[at - 7] ?? 0) + b) | 0;
};

const compress = (state: Int32Array, words: Int32Array): void => {
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let i = 0; i < 64; i += 1) {
    const one = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const choice = (e & f) ^ (~e & g);
    const first = (h + one + choice + (ROUNDS[i] ?? 0) + (words[i] ?? 0)) | 0;
    const two = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const most = (a & b) ^ (a & c) ^ (b & c);
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + two + most) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => {
    state[index] = ((state[index] ?? 0) + word) | 0;
  });
};
