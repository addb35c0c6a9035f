import { type BeforeApplicationShutdown, Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { statfs } from 'node:fs/promises';
import { DataFolder } from './data-folder.js';
import { KEPT_BACK_BYTES, KeptBack, NO_ROOM_BYTES } from './kept-back.js';
import { log } from './log.js';

const LOOK_MS = 2000;
/** The room that is kept back is made only where it is not missed. */
const PLENTY_BYTES = 3 * KEPT_BACK_BYTES;
/** With less, what is kept back counted in, nothing more is taken in; with so much more it is again. */
const OUT_BYTES = NO_ROOM_BYTES + KEPT_BACK_BYTES;
const AGAIN_BYTES = OUT_BYTES + NO_ROOM_BYTES;

export interface DiskRoom {
  /** Of what this user may fill, as `df` says it. */
  readonly usedFrac: number;
  readonly leftBytes: number;
}

/**
 * The disk on which the data folder lies, looked at every other second. Where the database lies on it too, some room is kept back; when
 * the disk is full that is given up to the database, and nothing more is taken in until there is room again, so that it can go on showing.
 */
@Injectable()
export class Disk implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private seen: DiskRoom | undefined;
  private out = false;
  private timer: NodeJS.Timeout | undefined;
  private stopped = false;
  private readonly keptBack: KeptBack;

  constructor(private readonly folder: DataFolder) {
    this.keptBack = new KeptBack(folder.path);
  }

  /** As it was at the last look; undefined where it cannot be looked at. */
  get room(): DiskRoom | undefined {
    return this.seen;
  }

  /** Whether nothing more is taken in for want of room. */
  get isOut(): boolean {
    return this.out;
  }

  /** What takes its time is left until the house is open. */
  async onApplicationBootstrap(): Promise<void> {
    this.seen = await roomOf(this.folder.path);
    const next = () => {
      if (!this.stopped) this.timer = setTimeout(() => void this.look().then(next), LOOK_MS).unref();
    };
    next();
  }

  beforeApplicationShutdown(): void {
    this.stopped = true;
    clearTimeout(this.timer);
  }

  private async look(): Promise<void> {
    this.seen = await roomOf(this.folder.path);
    if (!this.seen || !this.folder.holdsDatabase) return;
    const { leftBytes } = this.seen;
    const isKeptBack = await this.keptBack.isThere();
    const isOut = leftBytes + (isKeptBack ? KEPT_BACK_BYTES : 0) < (this.out ? AGAIN_BYTES : OUT_BYTES);
    if (isOut !== this.out) log.warn({ leftBytes }, isOut ? 'the disk is full: nothing more is taken in until there is room' : 'the disk has room again: all is taken in');
    this.out = isOut;
    const keepBack = isOut ? this.keptBack.giveUp() : !isKeptBack && leftBytes >= PLENTY_BYTES ? this.keptBack.make() : Promise.resolve();
    await keepBack.catch((error: unknown) => log.warn({ err: error }, 'room on the disk could not be kept back or given up; it is tried again'));
  }
}

async function roomOf(path: string): Promise<DiskRoom | undefined> {
  const found = await statfs(path).catch(() => undefined);
  if (!found) return undefined;
  const { blocks, bfree, bavail, bsize } = found;
  return { usedFrac: (blocks - bfree) / Math.max(1, blocks - bfree + bavail), leftBytes: bavail * bsize };
}
