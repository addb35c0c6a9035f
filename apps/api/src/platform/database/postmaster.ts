import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** What a server writes about itself in its folder while it runs. */
export interface Postmaster {
  readonly pid: number;
  /** 0 until it has chosen one. */
  readonly port: number;
}

const fileOf = (folder: string) => join(folder, 'postmaster.pid');

/** The server that runs on this folder, or undefined. A file left by a server that is gone is cleared away. */
export function findPostmaster(folder: string): Postmaster | undefined {
  let lines: string[];
  try {
    lines = readFileSync(fileOf(folder), 'utf8').split('\n');
  } catch {
    return undefined;
  }
  const pid = Number(lines[0]);
  if (isPostgres(pid)) return { pid, port: Number(lines[3]) || 0 };
  rmSync(fileOf(folder), { force: true });
  return undefined;
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** After a restart of the machine or of a container the number in the file may be another program's. */
function isPostgres(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 1 || !isAlive(pid)) return false;
  const command = commandOf(pid);
  return command === undefined || command.includes('postgres');
}

function commandOf(pid: number): string | undefined {
  try {
    if (process.platform === 'linux') return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
    if (process.platform === 'win32') return undefined;
    return execFileSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' });
  } catch {
    return undefined;
  }
}
