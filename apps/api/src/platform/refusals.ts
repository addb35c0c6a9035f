import { type ArgumentsHost, Catch, type ExceptionFilter, HttpException } from '@nestjs/common';
import { type Problem, type Refusal, type RefusalCode, REFUSALS } from '@stokehold/domain/contract';
import { randomUUID } from 'node:crypto';
import { log } from './log.js';

/** Carries a refusal out of a transaction, so that nothing of it stays. */
export class RefusalError extends Error {
  constructor(
    readonly refusal: Refusal,
    readonly more: Pick<Problem, 'fields'> & { readonly retryAfterS?: number } = {},
  ) {
    super(`${refusal.code}: ${refusal.detail}`);
    this.name = 'RefusalError';
  }
}

/** Throws the refusal: `refused('lot-empty', 'Pull from another lot.', { left: 0 })`. */
export const refused = (code: RefusalCode, detail: string, values?: Refusal['values']): never => {
  throw new RefusalError({ code, detail, ...(values && { values }) });
};

const TITLES: Partial<Record<RefusalCode, string>> = {
  'input-invalid': 'What was sent cannot be read',
  'not-signed-in': 'Nobody is signed in',
  'not-allowed': 'Not allowed',
  'database-away': 'The database does not answer',
  'disk-full': 'The disk is full',
  unexpected: 'Something broke',
};
const titleOf = (code: RefusalCode) => TITLES[code] ?? code.replaceAll('-', ' ');

/** Lost connections as node and PostgreSQL name them: ECONN*, 57P01 to 57P03 (shutdown, crash, starting), class 08 (connection), a socket among files that is gone. */
const isDatabaseAway = (error: unknown): boolean => {
  const { code, message, syscall } = (error ?? {}) as { code?: unknown; message?: unknown; syscall?: unknown };
  return (
    (typeof code === 'string' && /^(ECONN|EPIPE|57P0[123]|08)/.test(code)) ||
    (code === 'ENOENT' && syscall === 'connect') ||
    (typeof message === 'string' && /Connection terminated|connection timeout|Client has encountered a connection error/i.test(message))
  );
};

/** What is said where there is no room for what was sent. */
export const DISK_FULL = 'The disk of the database is full. What you sent was not kept; what was kept before is there. Make room on that machine, then send it again.';

/** A file of the database cannot grow: 53100; ENOSPC where the house itself writes. */
export const isDiskFull = (error: unknown): boolean => ['53100', 'ENOSPC'].includes(String(((error ?? {}) as { code?: unknown }).code));

/** A new thing came with the id of one that is there, perhaps in another yard: a unique key (23505) of the table's first column. */
const isIdTaken = (error: unknown): boolean => {
  const { code, constraint } = ((error as { driverError?: unknown } | undefined)?.driverError ?? error ?? {}) as { code?: unknown; constraint?: unknown };
  return code === '23505' && typeof constraint === 'string' && constraint.endsWith('_pkey');
};

function refusalOf(error: unknown): { refusal: Refusal; more: RefusalError['more'] } {
  if (error instanceof RefusalError) return { refusal: error.refusal, more: error.more };
  if (isDatabaseAway(error)) {
    return {
      refusal: { code: 'database-away', detail: 'The database does not answer. What you sent was not kept; send it again in a few seconds.' },
      more: { retryAfterS: 2 },
    };
  }
  if (isDiskFull(error)) return { refusal: { code: 'disk-full', detail: DISK_FULL }, more: {} };
  if (isIdTaken(error)) return { refusal: { code: 'id-taken', detail: 'Something else has this id already. Send it again with an id of its own.' }, more: {} };
  const status = error instanceof HttpException ? error.getStatus() : (error as { status?: number } | undefined)?.status;
  if (status === 404) return { refusal: { code: 'not-found', detail: 'There is nothing at this address. See /api/docs for what there is.' }, more: {} };
  if (status && status >= 400 && status < 500) {
    return { refusal: { code: 'input-invalid', detail: 'The request is not readable JSON of at most 256 kB. Correct it and send it again.' }, more: {} };
  }
  const reference = randomUUID();
  log.error({ err: error, reference }, 'a request broke');
  return { refusal: { code: 'unexpected', detail: `Nothing was kept. Send it again; if it breaks again, give the manager this number: ${reference}.` }, more: {} };
}

/** Every refusal and every fault leaves the house as application/problem+json (RFC 9457). */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  /** @param onRefused  told of every refusal as it leaves */
  constructor(private readonly onRefused?: (code: RefusalCode) => void) {}

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<{ originalUrl: string }>();
    const response = http.getResponse<{
      headersSent: boolean;
      status(code: number): { type(t: string): { send(body: string): void } };
      setHeader(name: string, value: string): void;
    }>();
    if (response.headersSent) return;
    const { refusal, more } = refusalOf(error);
    const status = REFUSALS[refusal.code];
    this.onRefused?.(refusal.code);
    const body: Problem = {
      type: `/api/docs#${refusal.code}`,
      title: titleOf(refusal.code),
      status,
      detail: refusal.detail,
      instance: request.originalUrl,
      code: refusal.code,
      ...(refusal.values && { values: refusal.values }),
      ...(more.fields && { fields: more.fields }),
    };
    if (more.retryAfterS) response.setHeader('Retry-After', String(more.retryAfterS));
    response.status(status).type('application/problem+json').send(JSON.stringify(body));
  }
}
