import 'reflect-metadata';
import { resolve } from 'node:path';
import type { Arguments } from './arguments.js';
import { certificateOf } from './certificate.js';
import { Broker } from './gateways/index.js';
import { openHouse } from './house.js';
import { DeviceRates, FirstRunToken } from './identity/index.js';
import { LiveGateway } from './live/index.js';
import { openPractice, practiceOpening } from './open-practice.js';
import { SearchBudget } from './planning/index.js';
import { log, type Settings } from './platform/index.js';
import { screensAreBuilt } from './screens.js';
import { Forecasts } from './weather/index.js';
import { addressHere, welcome } from './welcome.js';

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
  const opening = practice && practiceOpening(practice);
  const certificate = await certificateOf(settings);
  const app = await openHouse({ databaseUrl, workers: settings.STOKEHOLD_WORKERS, dataFolder: resolve(settings.STOKEHOLD_DATA), databaseInside: settings.DATABASE_URL === undefined }, certificate);
  onOpened(() => app.close());
  app.get(DeviceRates).perS = settings.STOKEHOLD_DEVICE_REQUESTS;
  await app.listen(settings.PORT, settings.HOST);
  const scheme = certificate ? 'https' : 'http';
  const { port } = app.getHttpServer().address() as { port: number };
  const firstRunToken = await app.get(FirstRunToken).issue();
  process.stdout.write(`${welcome({ scheme, host: settings.HOST, port, data, firstRunToken, screensBuilt: screensAreBuilt() })}\n`);
  if (opening) {
    if (practice.at !== undefined) process.stdout.write(`\nThe practice night passes up to ${practice.at} first.\n`);
    process.stdout.write(`${await openPractice(app, opening, addressHere(scheme, port))}\n`);
  }
  if (settings.REDIS_URL) app.get(LiveGateway).hearOthers(settings.REDIS_URL);
  if (settings.FORECAST_URL) app.get(Forecasts).askAt(settings.FORECAST_URL);
  if (settings.MQTT_URL) {
    app.get(Broker).open({ url: settings.MQTT_URL, clientId: settings.MQTT_CLIENT_ID }).catch((error: unknown) => log.error({ err: error }, 'the broker could not be taken'));
  }
  app.get(SearchBudget).afterwards = settings.STOKEHOLD_ITERATIONS;
}
