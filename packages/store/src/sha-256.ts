import { sha256 as digestOf } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 of a text in hexadecimal. A library, because the browser's own digest is missing over plain http. */
export const sha256 = (text: string): string => bytesToHex(digestOf(utf8ToBytes(text)));
