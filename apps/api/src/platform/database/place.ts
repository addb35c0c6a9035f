import { chmodSync, chownSync, mkdirSync, realpathSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { platform } from 'node:os';
import { join, resolve } from 'node:path';
import { type Account, requireReach, serverAccount } from './account.js';
import { type Binaries, findBinaries } from './binaries.js';
import { passwordOf } from './password.js';

const LOG_KEPT_BYTES = 5_000_000;

/** Small, for a kitchen's small computer. What is committed is on the disk: fsync and synchronous_commit stay as they are. */
const SERVER_SETTINGS = {
  listen_addresses: '127.0.0.1',
  max_connections: '40',
  shared_buffers: '32MB',
  maintenance_work_mem: '32MB',
  max_wal_size: '256MB',
  max_parallel_workers: '0',
  max_logical_replication_workers: '0',
  autovacuum_worker_slots: '2',
  autovacuum_max_workers: '1',
  io_method: 'sync',
  jit: 'off',
  huge_pages: 'off',
};

export interface EmbeddedOptions {
  /** The folder of the house's data; the database lies in `database` below it. */
  readonly folder: string;
  /** More settings of the server, for tests. */
  readonly settings?: Readonly<Record<string, string>>;
}

/** What an address of a socket in the file system may be long, at the least of the systems it runs on (macOS). */
const SOCKET_PATH_BYTES = 103;
/** The longest name that the server gives a socket. */
const SOCKET_NAME = '.s.PGSQL.65535';

/** A socket among the server's own files spares every question the way through the network's code; pg_ctl passes its folder through a shell. */
function socketSettings(files: string): Record<string, string> {
  const fits = platform() !== 'win32' && /^[\w./@+-]+$/.test(files) && join(files, SOCKET_NAME).length <= SOCKET_PATH_BYTES;
  return { unix_socket_directories: fits ? files : '', unix_socket_permissions: '0700' };
}

/** All that is needed to run the server of one folder. */
export interface Place {
  readonly binaries: Binaries;
  readonly account: Account;
  readonly password: string;
  readonly folder: string;
  /** The server's own files. */
  readonly files: string;
  readonly log: string;
  readonly settings: Readonly<Record<string, string>>;
}

export async function preparePlace({ folder: given, settings }: EmbeddedOptions): Promise<Place> {
  const binaries = await findBinaries();
  const account = serverAccount();
  const folder = makeFolder(resolve(given));
  requireReach(account, folder, binaries.postgres);
  const log = join(folder, 'database.log');
  if ((statSync(log, { throwIfNoEntry: false })?.size ?? 0) > LOG_KEPT_BYTES) renameSync(log, `${log}.1`);
  writeFileSync(log, '', { flag: 'a', mode: 0o600 });
  give(account, log);
  const files = join(folder, 'database');
  return { binaries, account, folder, files, log, password: passwordOf(folder), settings: { ...SERVER_SETTINGS, ...socketSettings(files), ...settings } };
}

/** Hands a file to the account of the server. */
export function give({ uid, gid }: Account, path: string): void {
  if (uid !== undefined) chownSync(path, uid, gid ?? uid);
}

function makeFolder(folder: string): string {
  try {
    if (mkdirSync(folder, { recursive: true })) chmodSync(folder, 0o755);
    return realpathSync(folder);
  } catch (error) {
    throw new Error(`The folder ${folder} cannot be made: set STOKEHOLD_DATA to a folder that this user may write to.`, { cause: error });
  }
}
