import helmet from 'helmet';
import type { IncomingMessage, ServerResponse } from 'node:http';

/** The live connection as `connect-src` names it: browsers differ in whether 'self' covers it. */
const socketsOf = (request: IncomingMessage): string => {
  const host = request.headers.host ?? '';
  return /^[A-Za-z0-9.:[\]-]+$/.test(host) ? `ws://${host} wss://${host}` : "'self'";
};

const guard = helmet({
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      fontSrc: ["'self'"],
      imgSrc: ["'self'", 'data:', 'blob:'],
      connectSrc: ["'self'", (request) => socketsOf(request)],
      workerSrc: ["'self'"],
      manifestSrc: ["'self'"],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  // A yard's own network speaks plain HTTP, where these mean nothing or fill the browser's log; a proxy with a certificate adds its own.
  strictTransportSecurity: false,
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
  xFrameOptions: { action: 'deny' },
});

/** The headers of every answer: only what this house serves itself may run, load or connect. */
export const headers = (request: IncomingMessage, response: ServerResponse, next: () => void): void => guard(request, response, next);
