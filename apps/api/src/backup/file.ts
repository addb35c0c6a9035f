import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, renameSync, rmSync } from 'node:fs';
import { pipeline } from 'node:stream';
import { finished } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import type { Sums } from './tables.js';

/** The first line of a backup. */
export interface Header {
  readonly stokehold: 1;
  readonly at: string;
  readonly migrations: readonly string[];
  /** The key of the PINs, which lies in no database: without it nobody could sign in after a restore. */
  readonly secretKey: string | null;
}
/** The last line: what the tables came to, and SHA-256 of every line before it. */
export interface Footer {
  readonly sums: Sums;
  readonly sha256: string;
}
/** A piece of a table: each row as PostgreSQL writes it in JSON, to the last digit. */
export interface Piece {
  readonly table: string;
  readonly rows: readonly string[];
}

/** Writes a backup beside its place first, so that a broken one never takes the place of a whole one. Readable by its owner alone. */
export class BackupWriter {
  private readonly digest = createHash('sha256');
  private readonly gzip = createGzip();
  private readonly file;

  constructor(private readonly path: string) {
    this.file = createWriteStream(this.draft, { mode: 0o600, flush: true });
    this.gzip.pipe(this.file);
    this.file.once('error', (error) => this.gzip.destroy(error));
  }

  private get draft(): string {
    return `${this.path}.unfinished`;
  }

  async line(value: Header | Piece): Promise<void> {
    const text = `${JSON.stringify(value)}\n`;
    this.digest.update(text);
    await this.put(text);
  }

  async finish(sums: Sums): Promise<void> {
    await this.put(`${JSON.stringify({ sums, sha256: this.digest.digest('hex') } satisfies Footer)}\n`);
    this.gzip.end();
    await finished(this.file);
    renameSync(this.draft, this.path);
  }

  abandon(): void {
    this.gzip.destroy();
    rmSync(this.draft, { force: true });
  }

  private put(text: string): Promise<void> {
    return new Promise((done, failed) => {
      this.gzip.once('error', failed);
      this.gzip.write(text, () => {
        this.gzip.off('error', failed);
        done();
      });
    });
  }
}

/** The lines of a gzipped file; throws where it ends too soon or is none. */
async function* lines(path: string): AsyncGenerator<string> {
  const unzipped = pipeline(createReadStream(path), createGunzip(), () => undefined).setEncoding('utf8'); // what fails is thrown below
  let begun = '';
  for await (const text of unzipped as AsyncIterable<string>) {
    const [first = '', ...more] = text.split('\n');
    begun += first;
    for (const next of more) {
      yield begun;
      begun = next;
    }
  }
  if (begun !== '') yield begun;
}

/** Reads a backup to its end and holds it to its digest; throws with a sentence where it is not whole. */
export async function checkedBackup(path: string): Promise<{ readonly header: Header; readonly footer: Footer }> {
  const digest = createHash('sha256');
  let [header, before]: [string | undefined, string | undefined] = [undefined, undefined];
  try {
    for await (const line of lines(path)) {
      if (before !== undefined) digest.update(`${before}\n`);
      header ??= line;
      before = line;
    }
    const first = JSON.parse(header ?? '') as Header;
    const footer = JSON.parse(before ?? '') as Footer;
    if (first.stokehold !== 1 || footer.sha256 !== digest.digest('hex')) throw new Error('the digest does not fit');
    return { header: first, footer };
  } catch (error) {
    throw new Error(`${path} is no whole backup of Stokehold: take another one. (${(error as Error).message})`, { cause: error });
  }
}

/** The pieces of a backup that was checked. */
export async function* piecesOf(path: string): AsyncGenerator<Piece> {
  for await (const line of lines(path)) {
    const piece = JSON.parse(line) as Partial<Piece>;
    if (piece.table !== undefined && piece.rows) yield piece as Piece;
  }
}
