import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeWholeFile } from '../whole-file.js';

/** The password of the database in `folder`: made once, at random; nobody but the folder's owner may read it. */
export function passwordOf(folder: string): string {
  const file = join(folder, 'database-password');
  try {
    if (existsSync(file)) chmodSync(file, 0o600);
    else makeWholeFile(file, randomBytes(24).toString('base64url'));
  } catch (error) {
    throw new Error(`Nothing can be written in ${folder}: set STOKEHOLD_DATA to a folder that this user may write to.`, { cause: error });
  }
  return readFileSync(file, 'utf8').trim();
}
