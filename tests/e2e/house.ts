import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmodSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

const root = fileURLToPath(new URL('../../', import.meta.url));
const CHROMIUMS = [process.env['CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const QUIET = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** A port that is free now. */
const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });

/** The built house as a user starts it, on a folder of its own. */
export class BuiltHouse {
  private constructor(
    readonly folder: string,
    readonly port: number,
    private process: ChildProcess,
    private said: string,
  ) {}

  static async open(argumentsGiven: readonly string[] = []): Promise<BuiltHouse> {
    const folder = mkdtempSync(join(tmpdir(), 'stokehold-e2e-'));
    chmodSync(folder, 0o755);
    const port = await freePort();
    const house = new BuiltHouse(folder, port, undefined as never, '');
    await house.start(argumentsGiven);
    return house;
  }

  get url(): string {
    return `http://127.0.0.1:${this.port}`;
  }

  /** What the server's window has shown so far. */
  get window(): string {
    return this.said;
  }

  /** The one-time token that the window shows when no manager exists. */
  get firstRunToken(): string {
    const token = /first-run#(\S+)/.exec(this.said)?.[1];
    if (!token) throw new Error(`the window shows no first-run token: ${this.said}`);
    return token;
  }

  async start(argumentsGiven: readonly string[] = [], settings: Readonly<Record<string, string>> = {}): Promise<void> {
    const environment = { ...process.env, PORT: String(this.port), STOKEHOLD_DATA: join(this.folder, 'data'), ...settings };
    delete (environment as Record<string, string | undefined>)['DATABASE_URL'];
    this.said = '';
    this.process = spawn(process.execPath, ['apps/api/dist/main.js', ...argumentsGiven], { cwd: root, env: environment, stdio: ['ignore', 'pipe', 'pipe'] });
    for (const stream of [this.process.stdout, this.process.stderr]) stream?.on('data', (chunk: Buffer) => (this.said += chunk.toString()));
    for (let tries = 0; tries < 600; tries++) {
      if ((await fetch(`${this.url}/api/health`).catch(() => undefined))?.ok && this.said.includes('Ctrl-C')) return;
      if (this.process.exitCode !== null) break;
      await wait(100);
    }
    throw new Error(`the house did not open: ${this.said}`);
  }

  /** As a power cut would: nothing is told, nothing is tidied. */
  async killHard(): Promise<void> {
    this.process.kill('SIGKILL');
    await this.ended();
  }

  async close(): Promise<void> {
    if (this.process.exitCode === null && this.process.signalCode === null) {
      this.process.kill('SIGTERM');
      await this.ended();
    }
    rmSync(this.folder, { recursive: true, force: true });
  }

  private ended(): Promise<void> {
    return new Promise((resolve) => (this.process.exitCode !== null || this.process.signalCode !== null ? resolve() : this.process.once('exit', () => resolve())));
  }
}

/** A visitor of the API with cookies of its own. */
export class Visitor {
  private readonly jar = new Map<string, string>();
  constructor(private readonly house: BuiltHouse) {}

  get cookies(): { name: string; value: string; url: string }[] {
    return [...this.jar].map(([name, value]) => ({ name, value, url: this.house.url }));
  }

  async get<T>(path: string): Promise<T> {
    return this.ask<T>('GET', path);
  }

  /** Sends a command under a key of its own. */
  async command<T>(path: string, body: object): Promise<T> {
    return this.ask<T>('POST', path, { key: randomUUID(), ...body });
  }

  async post<T>(path: string, body: object): Promise<T> {
    return this.ask<T>('POST', path, body);
  }

  private async ask<T>(method: string, path: string, body?: object): Promise<T> {
    const answer = await fetch(`${this.house.url}/api${path}`, {
      method,
      headers: { 'content-type': 'application/json', cookie: [...this.jar].map((pair) => pair.join('=')).join('; ') },
      ...(body && { body: JSON.stringify(body) }),
    });
    for (const cookie of answer.headers.getSetCookie()) {
      const [name = '', value = ''] = (cookie.split(';')[0] ?? '').split('=');
      this.jar.set(name, value);
    }
    if (!answer.ok) throw new Error(`${method} ${path}: ${await answer.text()}`);
    return (await answer.json()) as T;
  }
}

export async function openBrowser(): Promise<Browser> {
  const executablePath = CHROMIUMS.find((path) => path && existsSync(path));
  if (!executablePath) throw new Error('No Chromium was found. Install Debian\'s package chromium, or set CHROMIUM.');
  return chromium.launch({ executablePath, args: QUIET });
}

export const PHONE = { width: 390, height: 844 };
export const BOARD = { width: 1920, height: 1080 };
