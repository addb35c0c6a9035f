import type { Problem, RouteName, RouteReply, RouteRequest, Routes } from '@stokehold/domain/contract';
import hand from 'contract:hand';
import ways from 'contract:ways';
import { NoAnswer, Refused } from './refused.js';
import { faultsBy, type FaultIn } from './shape.js';

export type Input<N extends RouteName> = RouteRequest<Routes[N]>;
export type Reply<N extends RouteName> = RouteReply<Routes[N]>;

export type Way = (typeof ways)[RouteName];

const ANSWER_WITHIN_MS = 15_000;

/** Finds the fault in what a phone or a wall is told: replies, live messages, refusals, and what the device remembers of them. */
export const faultAtHand = faultsBy(hand);

/** The live message or reply, if it is as the contract says. What comes otherwise is a bug, or not from this house. */
export function told<T>(name: string, faultIn: FaultIn, value: unknown): T {
  const fault = faultIn(value);
  if (fault !== undefined) throw new TypeError(`${name} is not as the contract says at '${fault}'`);
  return value as T;
}

let faultAtDesk: Promise<typeof faultAtHand> | undefined;
/** The same for what the desks ask for, which is fetched with the first of it. */
function deskShapes(): Promise<typeof faultAtHand> {
  faultAtDesk ??= import('contract:desk').then((desk) => faultsBy(desk.default));
  faultAtDesk.catch(() => (faultAtDesk = undefined));
  return faultAtDesk;
}
const replyShape = async (name: RouteName): Promise<FaultIn> => (name in hand.properties ? faultAtHand : await deskShapes())(name);

/** Splits what a route is called with into its address and what is left over for query or body. */
export function addressOf(way: Way, input: Readonly<Record<string, unknown>>): { path: string; rest: Record<string, unknown> } {
  const rest: Record<string, unknown> = { ...input };
  const path = way.path.replaceAll(/:([A-Za-z]+)/g, (_, name: string) => {
    const value = rest[name];
    delete rest[name];
    return encodeURIComponent(String(value));
  });
  const query = way.method === 'GET' ? new URLSearchParams(rest as Record<string, string>).toString() : '';
  return { path: `/api${path}${query && `?${query}`}`, rest };
}

/** Nothing was done of what a device sent too fast: it is sent again when the answer says, so often. */
const TRIES = 4;

const secondsOf = (header: string | null): number | undefined => (header !== null && /^\d{1,4}$/.test(header) ? Number(header) : undefined);

async function refusalOf(response: Response): Promise<Error> {
  const said: unknown = await response.json().catch(() => undefined);
  return faultAtHand('problem')(said) === undefined ? new Refused(said as Problem, secondsOf(response.headers.get('retry-after'))) : new NoAnswer(`status ${response.status}`);
}

/** How long until this is worth sending again by itself; undefined where it is not for this code to decide. */
export const againAfterMs = (error: unknown): number | undefined =>
  error instanceof Refused && error.problem.code === 'device-too-fast' ? 1000 * (error.againAfterS ?? 1) : undefined;

/**
 * Calls a route of the contract. Throws `Refused` for a refusal and `NoAnswer` where no (readable) answer came. What holds the clock
 * of the moment at which it is sent is given as a function, and is made anew when it is sent again.
 */
export async function ask<N extends RouteName>(name: N, input: Input<N> | (() => Input<N>)): Promise<Reply<N>> {
  for (let tries = 1; ; tries++) {
    try {
      return await askOnce(name, typeof input === 'function' ? (input as () => Input<N>)() : input);
    } catch (error) {
      const waitMs = againAfterMs(error);
      if (waitMs === undefined || tries === TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, waitMs));
    }
  }
}

async function askOnce<N extends RouteName>(name: N, input: Input<N>): Promise<Reply<N>> {
  const way = ways[name];
  const { path, rest } = addressOf(way, input as Record<string, unknown>);
  const sends = way.method === 'POST';
  const shape = replyShape(name);
  // Looked at below, once the answer is there.
  shape.catch(() => undefined);
  let response: Response;
  try {
    response = await fetch(path, {
      method: way.method,
      credentials: 'same-origin',
      signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
      ...(sends && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(rest) }),
    });
  } catch (error) {
    throw new NoAnswer(error);
  }
  if (!response.ok) throw await refusalOf(response);
  const answer: unknown = await response.json().catch((error: unknown) => {
    throw new NoAnswer(error);
  });
  const faultIn = await shape.catch((error: unknown) => {
    throw new NoAnswer(error);
  });
  return told<Reply<N>>(name, faultIn, answer);
}
