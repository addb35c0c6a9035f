import { createHmac, timingSafeEqual } from 'node:crypto';

/**
 * A gateway signs what it sends over a broker, so that its token never travels there: HMAC-SHA256 of the payload, under the SHA-256
 * of its token, which is all that the house keeps of it. Written in hex.
 */
export const signatureOf = (payload: Buffer, tokenHash: Buffer): string => createHmac('sha256', tokenHash).update(payload).digest('hex');

export function isSigned(payload: Buffer, tokenHash: Buffer, signature: unknown): boolean {
  if (typeof signature !== 'string') return false;
  const [given, wanted] = [Buffer.from(signature, 'hex'), Buffer.from(signatureOf(payload, tokenHash), 'hex')];
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}
