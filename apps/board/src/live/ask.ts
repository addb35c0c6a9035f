import { problem, routes, type Route, type RouteName, type RouteReply, type RouteRequest, type Routes } from '@stokehold/domain/contract';
import { NoAnswer, Refused } from './refused.js';

export type Input<N extends RouteName> = RouteRequest<Routes[N]>;
export type Reply<N extends RouteName> = RouteReply<Routes[N]>;

const ANSWER_WITHIN_MS = 15_000;

/** Splits what a route is called with into its address and what is left over for query or body. */
export function addressOf(route: Route, input: Readonly<Record<string, unknown>>): { path: string; rest: Record<string, unknown> } {
  const rest: Record<string, unknown> = { ...input };
  const path = route.path.replaceAll(/:([A-Za-z]+)/g, (_, name: string) => {
    const value = rest[name];
    delete rest[name];
    return encodeURIComponent(String(value));
  });
  const query = route.method === 'GET' ? new URLSearchParams(rest as Record<string, string>).toString() : '';
  return { path: `/api${path}${query && `?${query}`}`, rest };
}

async function refusalOf(response: Response): Promise<Error> {
  const parsed = problem.safeParse(await response.json().catch(() => undefined));
  return parsed.success ? new Refused(parsed.data) : new NoAnswer(`status ${response.status}`);
}

/** Calls a route of the contract. Throws `Refused` for a refusal and `NoAnswer` where no (readable) answer came. */
export async function ask<N extends RouteName>(name: N, input: Input<N>): Promise<Reply<N>> {
  const route: Route = routes[name];
  const { path, rest } = addressOf(route, input as Record<string, unknown>);
  const sends = route.method === 'POST';
  let response: Response;
  try {
    response = await fetch(path, {
      method: route.method,
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
  return route.reply.parse(answer) as Reply<N>;
}
