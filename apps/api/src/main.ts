import 'reflect-metadata';
import { resolve } from 'node:path';
import { type Arguments, readArguments } from './arguments.js';
import { openHouse } from './house.js';
import { FirstRunToken } from './identity/index.js';
import { openPractice } from './open-practice.js';
import { EmbeddedDatabase } from './platform/database/index.js';
import { log, readSettings, type Settings } from './platform/index.js';
import { screensAreBuilt } from './screens.js';
import { welcome } from './welcome.js';

const CLOSE_S = 20;

/** What was opened, to be closed the other way round; a signal may come before all is open. */
class Opened {
  private readonly closers: (() => Promise<void>)[] = [];
  private closing: Promise<void> | undefined;

  add(close: () => Promise<void>): void {
    this.closers.unshift(close);
  }

  get isClosing(): boolean {
    return this.closing !== undefined;
  }

  close(): Promise<void> {
    this.closing ??= this.closeAll();
    return this.closing;
  }

  private async closeAll(): Promise<void> {
    for (const close of this.closers) await close();
  }
}

async function open(opened: Opened, settings: Settings, { practice }: Arguments): Promise<void> {
  const embedded = settings.DATABASE_URL ? undefined : await EmbeddedDatabase.open({ folder: settings.STOKEHOLD_DATA });
  if (embedded) opened.add(() => embedded.close());
  const app = await openHouse({
    databaseUrl: settings.DATABASE_URL ?? embedded!.url,
    workers: settings.STOKEHOLD_WORKERS,
    dataFolder: resolve(settings.STOKEHOLD_DATA),
  });
  opened.add(() => app.close());
  await app.listen(settings.PORT, settings.HOST);
  const { port } = app.getHttpServer().address() as { port: number };
  const data = embedded ? embedded.folder : `the database of DATABASE_URL, and its keys in ${resolve(settings.STOKEHOLD_DATA)}`;
  const firstRunToken = await app.get(FirstRunToken).issue();
  process.stdout.write(`${welcome({ host: settings.HOST, port, data, firstRunToken, screensBuilt: screensAreBuilt() })}\n`);
  if (practice) process.stdout.write(`${await openPractice(app, port)}\n`);
}

/** One sentence for the person at the window; the rest for the log. */
function sayWhy(error: unknown, settings?: Settings): void {
  log.debug({ err: error }, 'could not start');
  const { code, message } = error as { code?: string; message?: string };
  const sentence =
    code === 'EADDRINUSE'
      ? `Port ${settings?.PORT} is taken already: stop what uses it, or set PORT to another one.`
      : code === 'EACCES'
        ? `Port ${settings?.PORT} may not be used by this user: set PORT to one above 1023.`
        : code === 'ECONNREFUSED' || code === 'ENOTFOUND'
          ? 'The server of DATABASE_URL does not answer: start it, or correct the setting.'
          : (message ?? String(error));
  process.stderr.write(`Stokehold did not start. ${sentence}\n`);
}

function closeOnSignal(opened: Opened): void {
  const end = () => {
    setTimeout(() => process.exit(1), CLOSE_S * 1000).unref();
    opened.close().then(
      () => process.exit(0),
      (error: unknown) => {
        log.error({ err: error }, 'could not close in order');
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
}

async function main(): Promise<void> {
  const opened = new Opened();
  let settings: Settings | undefined;
  closeOnSignal(opened);
  try {
    const given = readArguments(process.argv.slice(2));
    settings = readSettings(process.env);
    await open(opened, settings, given);
  } catch (error) {
    if (opened.isClosing) return; // a signal took away what was still being opened
    sayWhy(error, settings);
    await opened.close().catch((other: unknown) => log.error({ err: other }, 'not all could be closed'));
    process.exit(1);
  }
}

void main();
