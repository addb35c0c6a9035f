import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, chownSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './one-house.js';

const ROOT = '/usr/lib/postgresql';
const ACCOUNT = 'postgres';

/** The programs of the machine's own PostgreSQL, as Debian lays them; PG_BIN says where else. */
function programs(): string {
  const found = process.env['PG_BIN'] ?? (existsSync(ROOT) ? readdirSync(ROOT).sort((a, b) => Number(b) - Number(a)).map((version) => join(ROOT, version, 'bin'))[0] : undefined);
  if (!found) throw new Error('This needs a PostgreSQL of the machine: apt-get install postgresql, or PG_BIN set to the folder of initdb and pg_ctl.');
  return found;
}

/** A server of the machine's own PostgreSQL on a folder of its own: older than the one the house brings along. */
export class OwnServer {
  private readonly folder = mkdtempSync(join(tmpdir(), 'stokehold-server-'));
  private constructor(
    private readonly bin: string,
    private readonly port: number,
  ) {}

  static async start(): Promise<OwnServer> {
    const server = new OwnServer(programs(), await freePort());
    chmodSync(server.folder, 0o755);
    const files = join(server.folder, 'files');
    mkdirSync(files, { mode: 0o700 });
    const { uid, gid } = accountOf();
    if (uid !== undefined) for (const path of [server.folder, files]) chownSync(path, uid, gid ?? uid);
    server.run('initdb', ['-D', files, '-U', 'owner', '--auth=trust', '--encoding=UTF8', '--locale=C.UTF-8']);
    server.run('pg_ctl', ['-D', files, '-w', '-l', join(server.folder, 'log'), '-o', `-c port=${server.port} -c listen_addresses=127.0.0.1 -c unix_socket_directories=${files}`, 'start']);
    server.run('createdb', ['-h', '127.0.0.1', '-p', String(server.port), '-U', 'owner', 'yard']);
    return server;
  }

  get url(): string {
    return `postgres://owner@127.0.0.1:${this.port}/yard`;
  }
  get version(): number {
    return Number(/(\d+)\./.exec(execFileSync(join(this.bin, 'postgres'), ['--version'], { encoding: 'utf8' }))?.[1]);
  }

  stop(mode: 'fast' | 'immediate' = 'fast'): void {
    this.run('pg_ctl', ['-D', join(this.folder, 'files'), '-w', '-m', mode, 'stop']);
  }
  again(): void {
    this.run('pg_ctl', ['-D', join(this.folder, 'files'), '-w', '-l', join(this.folder, 'log'), '-o', `-c port=${this.port} -c listen_addresses=127.0.0.1 -c unix_socket_directories=${join(this.folder, 'files')}`, 'start']);
  }
  remove(): void {
    try {
      this.stop('immediate');
    } finally {
      rmSync(this.folder, { recursive: true, force: true });
    }
  }

  private run(program: string, given: readonly string[]): void {
    execFileSync(join(this.bin, program), given, { ...accountOf(), cwd: '/', stdio: 'ignore' });
  }
}

/** PostgreSQL refuses to run as root. */
function accountOf(): { readonly uid?: number; readonly gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string) => Number(execFileSync('id', [flag, ACCOUNT], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}
