import { randomBytes } from 'node:crypto';
import { open, rename, rm, stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';

/** Four files of the database's log, 16 MiB each: enough to go on showing, and to come up again, for hours. */
export const KEPT_BACK_BYTES = 64 * 1024 * 1024;
const PIECE_BYTES = 1024 * 1024;
/** With less besides, nothing more is taken in: two files of the database's log. */
export const NO_ROOM_BYTES = 32 * 1024 * 1024;

/**
 * Room on the disk that nobody else can take: a file in the data folder, given up when the disk is full. The database keeps what is
 * committed in files that it makes anew; without room for the next one it stops, and shows nothing any more.
 */
export class KeptBack {
  private readonly path: string;

  constructor(folder: string) {
    this.path = join(folder, 'room-kept-back');
  }

  async isThere(): Promise<boolean> {
    return stat(this.path).then(({ size }) => size >= KEPT_BACK_BYTES, () => false);
  }

  /** Bytes of chance, for some file systems keep zeros as nothing. What was half made when the house fell is made anew. */
  async make(): Promise<void> {
    const unfinished = `${this.path}.unfinished`;
    const file = await open(unfinished, 'w', 0o600);
    try {
      const piece = randomBytes(PIECE_BYTES);
      for (let made = 0; made < KEPT_BACK_BYTES; made += PIECE_BYTES) await file.write(piece);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(unfinished, this.path);
  }

  async giveUp(): Promise<void> {
    await Promise.all([this.path, `${this.path}.unfinished`].map((path) => rm(path, { force: true })));
  }
}

/** A database that is to start needs room for its log. */
export async function makeRoomToStart(folder: string): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize < NO_ROOM_BYTES) await new KeptBack(folder).giveUp();
}
