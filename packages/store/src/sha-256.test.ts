import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { sha256 } from './sha-256.ts';

// The digests of the examples published with FIPS 180-4 (one block, two blocks, empty message); from memory.
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
])('digest of %j', (text, digest) => {
  expect(sha256(text)).toBe(digest);
});

test('agrees with the digest of the Node runtime at every length around the block border, and beyond ASCII', () => {
  for (let length = 0; length < 200; length++) {
    const text = 'ñ😀a'
      .repeat(length)
      .slice(0, length)
      .replace(/\p{Surrogate}/gu, 'x');
    expect(sha256(text)).toBe(createHash('sha256').update(text).digest('hex'));
  }
});
