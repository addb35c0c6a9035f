import type { YardId } from '@stokehold/domain/quantity';
import { parseCookie, type SetCookie, stringifySetCookie } from 'cookie';

export const DEVICE_COOKIE = 'stokehold_device';
export const SESSION_COOKIE = 'stokehold_session';
/** Says to a proxy before several processes which yard a browser belongs to, so that a yard stays with one of them (infra/nginx); the house believes nothing of it. */
const YARD_COOKIE = 'stokehold_yard';

/** As long as browsers keep a cookie at all; it is renewed whenever a screen asks who it is. */
const DEVICE_COOKIE_S = 400 * 24 * 3600;
const SESSION_COOKIE_S = 16 * 3600;

/** As much of the HTTP request and response as cookies need. */
export interface CookieRequest {
  readonly headers: Record<string, string | undefined>;
  readonly secure: boolean;
}
export interface CookieResponse {
  append(name: string, value: string): unknown;
}

export interface Tokens {
  readonly device?: string | undefined;
  readonly session?: string | undefined;
}

/** The tokens that a request brings: of a browser as cookies, of a gateway as `Authorization: Bearer`. */
export function tokensOf(cookieHeader: string | undefined, bearer: string | undefined): Tokens {
  if (bearer !== undefined) return { device: bearer };
  const cookies = parseCookie(cookieHeader ?? '');
  return { device: cookies[DEVICE_COOKIE], session: cookies[SESSION_COOKIE] };
}

/** The token of an Authorization header, if it is a bearer's. */
export const bearerOf = (authorization: string | undefined): string | undefined => /^Bearer +(\S+)$/i.exec(authorization ?? '')?.[1];

const put = (request: CookieRequest, response: CookieResponse, cookie: Pick<SetCookie, 'name' | 'value' | 'maxAge'>): void =>
  void response.append('Set-Cookie', stringifySetCookie({ ...cookie, httpOnly: true, sameSite: 'strict', path: '/', secure: request.secure }));

export const putYard = (request: CookieRequest, response: CookieResponse, yardId: YardId) =>
  put(request, response, { name: YARD_COOKIE, value: yardId, maxAge: DEVICE_COOKIE_S });

export const putDevice = (request: CookieRequest, response: CookieResponse, token: string) =>
  put(request, response, { name: DEVICE_COOKIE, value: token, maxAge: DEVICE_COOKIE_S });

export const putSession = (request: CookieRequest, response: CookieResponse, token: string) =>
  put(request, response, { name: SESSION_COOKIE, value: token, maxAge: SESSION_COOKIE_S });

export const takeSession = (request: CookieRequest, response: CookieResponse) =>
  put(request, response, { name: SESSION_COOKIE, value: '', maxAge: 0 });
