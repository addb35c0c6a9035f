import { readFile } from 'node:fs/promises';
import { createSecureContext } from 'node:tls';
import type { Settings } from './platform/index.js';

export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

const read = (name: 'STOKEHOLD_CERTIFICATE' | 'STOKEHOLD_KEY', path: string): Promise<Buffer> =>
  readFile(path).catch(() => {
    throw new Error(`The file of ${name} cannot be read. Make it with infra/https/certificate.sh, or correct the setting.`);
  });

/** The certificate of the settings, tried before anything opens; undefined where none is set. */
export async function certificateOf({ STOKEHOLD_CERTIFICATE, STOKEHOLD_KEY }: Settings): Promise<Certificate | undefined> {
  if (STOKEHOLD_CERTIFICATE === undefined || STOKEHOLD_KEY === undefined) return undefined;
  const certificate = { cert: await read('STOKEHOLD_CERTIFICATE', STOKEHOLD_CERTIFICATE), key: await read('STOKEHOLD_KEY', STOKEHOLD_KEY) };
  try {
    createSecureContext(certificate);
  } catch {
    throw new Error('STOKEHOLD_CERTIFICATE and STOKEHOLD_KEY do not belong together, or are no certificate and key. Make them with infra/https/certificate.sh.');
  }
  return certificate;
}
