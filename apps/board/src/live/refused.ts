import type { Problem } from '@stokehold/domain/contract';

/** The server understood and said no; nothing was changed. What people read stands in words/, by the problem's code. */
export class Refused extends Error {
  /** @param againAfterS  what the answer said about when to ask again */
  constructor(
    readonly problem: Problem,
    readonly againAfterS?: number,
  ) {
    super(problem.detail);
    this.name = 'Refused';
  }
}

/** No answer came: no signal, no server, or something in between that is not the server. */
export class NoAnswer extends Error {
  constructor(override readonly cause: unknown) {
    super('No answer from the server.');
    this.name = 'NoAnswer';
  }
}

/** Worth asking again later with the same key: the refusal is about the moment, not about what was asked. */
export const passes = (error: unknown): boolean =>
  error instanceof NoAnswer || (error instanceof Refused && (error.problem.status >= 500 || error.problem.status === 429));
