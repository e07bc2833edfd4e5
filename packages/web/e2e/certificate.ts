import { createHash, X509Certificate } from 'node:crypto';
import { generate } from 'selfsigned';

/** A certificate for localhost that nobody vouches for, and the digest by which the browser is told to trust it. */
export interface Certificate {
  readonly key: string;
  readonly cert: string;
  readonly spki: string;
}

export async function certificate(): Promise<Certificate> {
  const { private: key, cert } = await generate([{ name: 'commonName', value: 'localhost' }], { keySize: 2048 });
  const publicKey = new X509Certificate(cert).publicKey.export({ type: 'spki', format: 'der' });
  return { key, cert, spki: createHash('sha256').update(publicKey).digest('base64') };
}
