import 'reflect-metadata';
import { resolve } from 'node:path';
import type { Arguments } from './arguments.js';
import { openHouse } from './house.js';
import { FirstRunToken } from './identity/index.js';
import { openPractice } from './open-practice.js';
import type { Settings } from './platform/index.js';
import { screensAreBuilt } from './screens.js';
import { welcome } from './welcome.js';

export interface Serving {
  readonly settings: Settings;
  readonly arguments: Arguments;
  readonly databaseUrl: string;
  /** Where the data lies, in words. */
  readonly data: string;
  /** Told how to close what was opened, as soon as it was. */
  readonly onOpened: (close: () => Promise<void>) => void;
}

/** Opens the house, listens, and says in the window where it is and what to do next. */
export async function serve({ settings, arguments: { practice }, databaseUrl, data, onOpened }: Serving): Promise<void> {
  const app = await openHouse({ databaseUrl, workers: settings.STOKEHOLD_WORKERS, dataFolder: resolve(settings.STOKEHOLD_DATA) });
  onOpened(() => app.close());
  await app.listen(settings.PORT, settings.HOST);
  const { port } = app.getHttpServer().address() as { port: number };
  const firstRunToken = await app.get(FirstRunToken).issue();
  process.stdout.write(`${welcome({ host: settings.HOST, port, data, firstRunToken, screensBuilt: screensAreBuilt() })}\n`);
  if (practice) process.stdout.write(`${await openPractice(app, port)}\n`);
}
