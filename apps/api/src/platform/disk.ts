import { Injectable } from '@nestjs/common';
import { statfs } from 'node:fs/promises';
import { DataFolder } from './data-folder.js';

export interface DiskRoom {
  /** Of what this user may fill, as `df` says it. */
  readonly usedFrac: number;
  readonly leftBytes: number;
}

/** The disk on which the data folder lies. */
@Injectable()
export class Disk {
  constructor(private readonly folder: DataFolder) {}

  /** Undefined where it cannot be looked at. */
  async look(): Promise<DiskRoom | undefined> {
    const found = await statfs(this.folder.path).catch(() => undefined);
    if (!found) return undefined;
    const { blocks, bfree, bavail, bsize } = found;
    return { usedFrac: (blocks - bfree) / Math.max(1, blocks - bfree + bavail), leftBytes: bavail * bsize };
  }
}
