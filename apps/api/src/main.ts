import { resolve } from 'node:path';
import { type Arguments, readArguments } from './arguments.js';
import { EmbeddedDatabase } from './platform/database/index.js';
import { readSettings, type Settings } from './platform/config.js';
import { log } from './platform/log.js';

const CLOSE_S = 20;
const PARENT_WATCH_MS = 500;

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

/** The database starts while the house is loaded: each takes about as long as the other. */
async function open(opened: Opened, settings: Settings, given: Arguments): Promise<void> {
  const loading = import('./serve.js');
  const embedded = settings.DATABASE_URL ? undefined : await EmbeddedDatabase.open({ folder: settings.STOKEHOLD_DATA });
  if (embedded) opened.add(() => embedded.close());
  const { serve } = await loading;
  await serve({
    settings,
    arguments: given,
    databaseUrl: settings.DATABASE_URL ?? embedded!.url,
    data: embedded ? embedded.folder : `the database of DATABASE_URL, and its keys in ${resolve(settings.STOKEHOLD_DATA)}`,
    onOpened: (close) => opened.add(close),
  });
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
  if (process.env['npm_lifecycle_event']) closeWithParent(end);
}

/** A signal to npm ends npm and its shell, but the shell does not pass it on: without them the house closes too. */
function closeWithParent(end: () => void): void {
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    end();
  }, PARENT_WATCH_MS);
  watch.unref();
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
