import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../../apps/api/dist/main.js', import.meta.url));

/** Here one device stands for as many as it takes. */
const MANY_DEVICES = '10000';

/** A data folder of its own, gone after the test with the server that may still run on it. */
export class Folder {
  readonly path = mkdtempSync(join(tmpdir(), 'stokehold-faults-'));

  constructor() {
    chmodSync(this.path, 0o755); // the server runs as a user of its own when this process is root
  }

  /** The process of the database server, or undefined when none runs. */
  get serverPid(): number | undefined {
    const file = join(this.path, 'database', 'postmaster.pid');
    return existsSync(file) ? Number(readFileSync(file, 'utf8').split('\n')[0]) : undefined;
  }

  async remove(): Promise<void> {
    const pid = this.serverPid;
    if (pid) process.kill(pid, 'SIGINT');
    for (let tries = 0; this.serverPid && tries < 200; tries++) await pause(50);
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** The built program as a process of its own. */
export class House {
  said = '';
  private cookie = '';
  private readonly gone: Promise<number | null>;

  private constructor(
    private readonly process: ChildProcess,
    readonly at: string,
  ) {
    for (const stream of [process.stdout, process.stderr]) stream?.on('data', (chunk: Buffer) => (this.said += chunk.toString()));
    this.gone = new Promise((done) => process.once('exit', (code) => done(code)));
  }

  static async start(folder: Folder, environment: Record<string, string> = {}): Promise<House> {
    const port = await freePort();
    const { DATABASE_URL: _server, ...own } = process.env;
    const child = spawn(process.execPath, [main], {
      env: { ...own, STOKEHOLD_DATA: folder.path, PORT: String(port), HOST: '127.0.0.1', STOKEHOLD_WORKERS: '0', STOKEHOLD_DEVICE_REQUESTS: MANY_DEVICES, ...environment },
    });
    return new House(child, `http://127.0.0.1:${port}`);
  }

  /** Waits until it answers; throws with what it said when it ended instead. */
  async ready(): Promise<this> {
    for (const end = Date.now() + 60_000; Date.now() < end; await pause(50)) {
      if (this.process.exitCode !== null) throw new Error(`It ended: ${this.said}`);
      const answer = await fetch(`${this.at}/api/health`).catch(() => undefined);
      if (answer?.ok && ((await answer.json()) as { status: string }).status === 'ready') return this;
    }
    throw new Error(`It does not answer: ${this.said}`);
  }

  async firstRun(): Promise<void> {
    while (!/#(\S+)/.test(this.said)) await pause(20);
    const token = /#(\S+)/.exec(this.said)?.[1];
    const yard = {
      name: 'Saltmarsh Yard', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 40, planHeightM: 25, planTopDeg: 0,
      woodPlace: { xM: 20, yM: 24 }, walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
    };
    const answer = await this.post('/first-run', { token, yard, manager: { name: 'Renske', pin: '480213', language: 'en' }, deviceName: 'Tablet' });
    if (answer.status !== 201) throw new Error(await answer.text());
    this.cookie = answer.headers.getSetCookie().map((set) => set.split(';')[0]).join('; ');
  }

  /** The same person and device in another process. */
  as({ cookie }: { readonly cookie: string }): this {
    this.cookie = cookie;
    return this;
  }
  get person(): { readonly cookie: string } {
    return { cookie: this.cookie };
  }

  post(path: string, body: object): Promise<Response> {
    return fetch(`${this.at}/api${path}`, { method: 'POST', headers: { 'content-type': 'application/json', cookie: this.cookie }, body: JSON.stringify(body) });
  }

  async get<T>(path: string): Promise<T> {
    return (await (await fetch(`${this.at}/api${path}`, { headers: { cookie: this.cookie } })).json()) as T;
  }

  get pid(): number {
    return this.process.pid!;
  }

  /** Holds the process still, as one that hangs; `goOn` lets it go on. */
  hang(): void {
    this.process.kill('SIGSTOP');
  }
  goOn(): void {
    this.process.kill('SIGCONT');
  }

  end(signal: NodeJS.Signals): Promise<number | null> {
    this.process.kill(signal);
    return this.gone;
  }

  /** How it ended by itself. */
  ended(): Promise<number | null> {
    return this.gone;
  }
}

export const freePort = () =>
  new Promise<number>((done, failed) => {
    const probe = createServer().once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => done(port));
    });
  });
