import { randomBytes } from 'node:crypto';
import { linkSync, rmSync, writeFileSync } from 'node:fs';

/**
 * Makes a file that only this user may read; one that is there already stays as it is. It is written under another name
 * and then linked: of several processes that make it at once all find the same one, and none ever finds it half written.
 */
export function makeWholeFile(path: string, content: string | Buffer): void {
  const draft = `${path}.${process.pid}.${randomBytes(4).toString('hex')}`;
  try {
    writeFileSync(draft, content, { flag: 'wx', mode: 0o600, flush: true });
    linkSync(draft, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}
