import { type DynamicModule, type LoggerService } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AppModule, type HouseOptions } from './app.module.js';
import type { Certificate } from './certificate.js';
import { headers } from './headers.js';
import { log, ProblemFilter, WantOfRoom } from './platform/index.js';
import { serveScreens } from './screens.js';

const BODY_LIMIT = '256kb';

const quiet: LoggerService = {
  log: (message: unknown, ...more: unknown[]) => log.debug({ more }, String(message)),
  warn: (message: unknown, ...more: unknown[]) => log.warn({ more }, String(message)),
  // What cannot start is said once, by the program itself.
  error: (message: unknown, ...more: unknown[]) => (more.at(-1) === 'NestApplication' ? log.debug({ more }, String(message)) : log.error({ more }, String(message))),
};

/** The whole house on one database, API and screens on one port, by HTTPS where there is a certificate; not listening yet. */
export async function openHouse(options: HouseOptions, certificate?: Certificate): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.on(options) satisfies DynamicModule, {
    logger: quiet,
    abortOnError: false,
    bodyParser: false,
    ...(certificate && { httpsOptions: certificate }),
  });
  app.disable('x-powered-by');
  app.set('trust proxy', 'loopback');
  app.useBodyParser('json', { limit: BODY_LIMIT });
  app.use(headers);
  serveScreens(app);
  app.setGlobalPrefix('api');
  app.useGlobalFilters(new ProblemFilter((code) => code === 'disk-full' && app.get(WantOfRoom).note()));
  await app.init();
  return app;
}
