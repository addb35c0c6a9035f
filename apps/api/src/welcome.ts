import { networkInterfaces } from 'node:os';

export type Scheme = 'http' | 'https';

/** Where the machine itself opens the house. */
export const addressHere = (scheme: Scheme, port: number): string => `${scheme}://localhost:${port}`;

export interface Opened {
  readonly scheme: Scheme;
  readonly host: string;
  readonly port: number;
  /** Where the data lies, in words. */
  readonly data: string;
  readonly firstRunToken?: string | undefined;
  readonly screensBuilt: boolean;
}

/** The lines of the server's window once the house is open: where it is, where its data lies, what to do next. */
export function welcome({ scheme, host, port, data, firstRunToken, screensBuilt }: Opened): string {
  const here = addressHere(scheme, port);
  const around = host === '0.0.0.0' || host === '::' ? addresses().map((address) => `${scheme}://${address}:${port}`) : [];
  return [
    `Stokehold is open: ${here}`,
    ...(around.length > 0 ? [`From phones and boards in the yard: ${around.join('  ')}`] : []),
    `The data lies in ${data}`,
    ...(screensBuilt ? [] : ["The screens are not built yet: run 'npm run build'."]),
    firstRunToken ? `Nobody is set up yet. Make the yard and its manager here:\n    ${here}/first-run#${firstRunToken}` : `Open ${here} and sign in, or ${here}/wall for the board.`,
    'Ctrl-C closes it in order; nothing is lost when it ends otherwise.',
  ].join('\n');
}

const addresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
