import { destination, pino } from 'pino';

/** Standard output is for what a command was asked for. */
const STANDARD_ERROR = 2;

/** Structured log lines; secrets never reach it, and what looks like one is struck out. */
export const log = pino(
  {
    level: process.env['LOG_LEVEL'] ?? 'warn',
    redact: ['pin', '*.pin', 'token', '*.token', 'code', 'req.headers.cookie', 'req.headers.authorization'],
  },
  destination({ dest: STANDARD_ERROR, sync: true }),
);
