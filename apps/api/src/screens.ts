import type { NestExpressApplication } from '@nestjs/platform-express';
import { existsSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const built = fileURLToPath(new URL('../../board/dist', import.meta.url));
const page = join(built, 'index.html');

/** Whether the screens were built. */
export const screensAreBuilt = (): boolean => existsSync(page);

/** Serves the built screens: files by their names, and for every other address that is not the API's the page that knows all screens. */
export function serveScreens(app: NestExpressApplication): void {
  app.useStaticAssets(built, {
    index: false,
    setHeaders: (response: ServerResponse, path: string) => {
      // Files below assets/ carry a hash of what they hold in their names; all others are asked for again.
      response.setHeader('Cache-Control', path.startsWith(`${built}${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  app.use(sendPage);
}

interface AskedPage extends IncomingMessage {
  readonly path: string;
  accepts(type: string): string | false;
}
interface AnsweredPage extends ServerResponse {
  sendFile(path: string): void;
}

function sendPage(request: AskedPage, response: AnsweredPage, next: () => void): void {
  const isPage = (request.method === 'GET' || request.method === 'HEAD') && !/^\/(api|assets|live)(\/|$)/.test(request.path) && request.accepts('html');
  if (!isPage || !screensAreBuilt()) return next();
  response.setHeader('Cache-Control', 'no-cache');
  response.sendFile(page);
}
