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
  // Below: only where the browser came by HTTPS.
  strictTransportSecurity: false,
  // A yard's own network speaks plain HTTP, where these mean nothing and fill the browser's log.
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
  xFrameOptions: { action: 'deny' },
});

/** A year, the least that OWASP ASVS 3.4.1 asks for. Not for other names of the domain: they are not this house's. */
const onlyHttps = helmet.strictTransportSecurity({ maxAge: 31_536_000, includeSubDomains: false });

/** The headers of every answer: only what this house serves itself may run, load or connect; where there is a certificate, by HTTPS only from then on. */
export const headers = (request: IncomingMessage & { readonly secure?: boolean }, response: ServerResponse, next: () => void): void =>
  guard(request, response, () => (request.secure ? onlyHttps(request, response, next) : next()));
