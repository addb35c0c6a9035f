import 'reflect-metadata';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { resolve } from 'node:path';
import { type Arguments, readArguments } from './arguments.js';
import { openHouse } from './house.js';
import { EmbeddedDatabase } from './platform/database/index.js';
import { log, readSettings, type Settings } from './platform/index.js';
import { screensAreBuilt } from './screens.js';
import { welcome } from './welcome.js';

const CLOSE_S = 20;

/** Opens the house on its database; what was begun is ended again when a later step fails. */
async function open(settings: Settings, _arguments: Arguments): Promise<() => Promise<void>> {
  const embedded = settings.DATABASE_URL ? undefined : await EmbeddedDatabase.open({ folder: settings.STOKEHOLD_DATA });
  let app: NestExpressApplication | undefined;
  const close = async () => {
    await app?.close();
    await embedded?.close();
  };
  try {
    app = await openHouse({
      databaseUrl: settings.DATABASE_URL ?? embedded!.url,
      workers: settings.STOKEHOLD_WORKERS,
      dataFolder: resolve(settings.STOKEHOLD_DATA),
    });
    await app.listen(settings.PORT, settings.HOST);
    const { port } = app.getHttpServer().address() as { port: number };
    const data = embedded ? embedded.folder : `the database of DATABASE_URL, and its keys in ${resolve(settings.STOKEHOLD_DATA)}`;
    process.stdout.write(`${welcome({ host: settings.HOST, port, data, screensBuilt: screensAreBuilt() })}\n`);
    return close;
  } catch (error) {
    await close().catch((other: unknown) => log.error({ err: other }, 'not all could be closed'));
    throw error;
  }
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

function closeOnSignal(close: () => Promise<void>): void {
  let closing = false;
  const end = () => {
    if (closing) return; // npm and the window both pass Ctrl-C on
    closing = true;
    setTimeout(() => process.exit(1), CLOSE_S * 1000).unref();
    close().then(
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
  let settings: Settings | undefined;
  try {
    const given = readArguments(process.argv.slice(2));
    settings = readSettings(process.env);
    closeOnSignal(await open(settings, given));
  } catch (error) {
    sayWhy(error, settings);
    process.exit(1);
  }
}

void main();
