import { execFileSync } from 'node:child_process';
import { chmodSync, closeSync, mkdtempSync, openSync, rmdirSync, rmSync, statfsSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PIECES = [1_048_576, 65_536, 4096];

/** A file system of its own, small enough to be filled: in memory, so this is for root on Linux. */
export class SmallDisk {
  private readonly at = mkdtempSync(join(tmpdir(), 'stokehold-disk-'));
  private readonly filler = join(this.at, 'filler');

  constructor(sizeMiB: number) {
    if (process.getuid?.() !== 0) throw new Error('This fills a disk of its own, which only root can mount: run it as root, as the other faults are.');
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${sizeMiB}m`, 'tmpfs', this.at]);
    chmodSync(this.at, 0o755);
  }

  get data(): string {
    return join(this.at, 'data');
  }

  /** As `df` says it. */
  get usedFrac(): number {
    const { blocks, bfree, bavail } = statfsSync(this.at);
    return (blocks - bfree) / (blocks - bfree + bavail);
  }

  /** Somebody else's file grows until the disk is so full; 1 takes the last byte. */
  fill(usedFrac: number): void {
    const file = openSync(this.filler, 'a');
    for (const bytes of PIECES) {
      try {
        while (this.usedFrac < usedFrac) writeSync(file, Buffer.alloc(bytes));
      } catch (error) {
        if ((error as { code?: string }).code !== 'ENOSPC') throw error;
      }
    }
    closeSync(file);
  }
  empty(): void {
    rmSync(this.filler, { force: true });
  }

  remove(): void {
    execFileSync('umount', ['-l', this.at]);
    rmdirSync(this.at);
  }
}
