/**
 * SHA-256 of a text's UTF-8 bytes, as 64 hexadecimal digits (FIPS 180-4, sections 4.1.2, 5 and 6.2).
 * Own code because the browser's digest is missing on pages served over plain http, where a backup must still work.
 */
export function sha256(text: string): string {
  const message = new TextEncoder().encode(text);
  const padded = new Uint8Array(((message.length + 8) >> 6) * 64 + 64);
  padded.set(message);
  padded[message.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(message.length / 0x2000_0000));
  view.setUint32(padded.length - 4, (message.length << 3) >>> 0);

  const state = Int32Array.from(initialState);
  const schedule = new Int32Array(64);
  for (let offset = 0; offset < padded.length; offset += 64) addBlock(state, schedule, view, offset);
  return Array.from(state, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

function addBlock(state: Int32Array, w: Int32Array, view: DataView, offset: number): void {
  for (let t = 0; t < 16; t++) w[t] = view.getInt32(offset + t * 4);
  for (let t = 16; t < 64; t++) {
    const early = at(w, t - 15);
    const late = at(w, t - 2);
    const sigma0 = rotated(early, 7) ^ rotated(early, 18) ^ (early >>> 3);
    const sigma1 = rotated(late, 17) ^ rotated(late, 19) ^ (late >>> 10);
    w[t] = (at(w, t - 16) + sigma0 + at(w, t - 7) + sigma1) | 0;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let t = 0; t < 64; t++) {
    const sum1 = rotated(e, 6) ^ rotated(e, 11) ^ rotated(e, 25);
    const choice = (e & f) ^ (~e & g);
    const first = (h + sum1 + choice + at(roundConstants, t) + at(w, t)) | 0;
    const sum0 = rotated(a, 2) ^ rotated(a, 13) ^ rotated(a, 22);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const second = (sum0 + majority) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + second) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => {
    state[index] = at(state, index) + word;
  });
}

function rotated(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

function at(words: Int32Array, index: number): number {
  return words[index] ?? 0;
}

function firstPrimes(count: number): readonly number[] {
  const primes: number[] = [];
  for (let candidate = 2; primes.length < count; candidate++) {
    if (primes.every((prime) => candidate % prime !== 0)) primes.push(candidate);
  }
  return primes;
}

/** The first 32 bits of the fractional part: section 4.2.2 takes cube roots of primes, section 5.3.3 square roots. */
function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32) | 0;
}

const roundConstants = Int32Array.from(firstPrimes(64), (prime) => fractionBits(Math.cbrt(prime)));
const initialState = Int32Array.from(firstPrimes(8), (prime) => fractionBits(Math.sqrt(prime)));
