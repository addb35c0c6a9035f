import type { z } from 'zod';
import type { Permission } from './permission.js';
import type { RefusalCode } from './problem.js';

export type Method = 'GET' | 'POST';

/** One way into the house: what it takes, what it answers, who may, and the refusals to expect. */
export interface Route<
  P extends z.ZodType = z.ZodType, Q extends z.ZodType = z.ZodType, B extends z.ZodType = z.ZodType, R extends z.ZodType = z.ZodType,
> {
  readonly method: Method;
  /** Below /api; a parameter is written ':id'. */
  readonly path: string;
  readonly may: Permission;
  readonly summary: string;
  readonly params?: P;
  readonly query?: Q;
  readonly body?: B;
  readonly reply: R;
  readonly refusals: readonly RefusalCode[];
}

export const route = <const T extends Route>(definition: T): T => definition;

type Asked<T, K extends 'params' | 'query' | 'body'> = T extends { readonly [X in K]: infer S extends z.ZodType } ? z.output<S> : unknown;
/** Everything a route is called with, in one flat object: parameters, query and body. */
export type RouteInput<T> = Asked<T, 'params'> & Asked<T, 'query'> & Asked<T, 'body'>;
type Given<T, K extends 'params' | 'query' | 'body'> = T extends { readonly [X in K]: infer S extends z.ZodType } ? z.input<S> : unknown;
/** The same as a client writes it, before defaults are filled in. */
export type RouteRequest<T> = Given<T, 'params'> & Given<T, 'query'> & Given<T, 'body'>;
export type RouteReply<T> = T extends { readonly reply: infer S extends z.ZodType } ? z.output<S> : never;
