import { applyDecorators, createParamDecorator, type ExecutionContext, Get, Header, Post, SetMetadata } from '@nestjs/common';
import type { Route } from '@stokehold/domain/contract';
import type { z } from 'zod';
import type { Actor } from './actor.js';
import { RefusalError } from './refusals.js';

export const ROUTE = Symbol('route');

export interface AskedRequest {
  readonly headers: Record<string, string | undefined>;
  readonly ip?: string;
  readonly params: unknown;
  readonly query: unknown;
  readonly body: unknown;
  /** Set by the guard that knows devices and people. */
  actor?: Actor;
}

/** Makes a controller's method the one that answers a route of the contract. */
export const Answers = (route: Route): MethodDecorator =>
  applyDecorators(SetMetadata(ROUTE, route), route.method === 'GET' ? Get(route.path) : Post(route.path), Header('Cache-Control', 'no-store'));

const routeOf = (context: ExecutionContext): Route => Reflect.getMetadata(ROUTE, context.getHandler()) as Route;

function parsed(schema: z.ZodType | undefined, value: unknown): object {
  if (!schema) return {};
  const result = schema.safeParse(value ?? {});
  if (result.success) return kept(result.data as object);
  const fields = result.error.issues.slice(0, 20).map((issue) => ({ path: issue.path.join('.') || '(whole)', wants: issue.message }));
  throw new RefusalError(
    { code: 'input-invalid', detail: `Correct this and send it again: ${fields.map(({ path, wants }) => `${path}: ${wants}`).join('; ')}.` },
    { fields },
  );
}

const UNKEEPABLE = /[\0\ud800-\udfff]/u;

/** Neither the database nor canonical JSON holds the empty character or half of one: what was sent would not come back as it was. */
function kept(data: object): object {
  const path = unkeepable(data);
  if (path === undefined) return data;
  const wants = 'text without the character U+0000 and without halves of characters';
  throw new RefusalError({ code: 'input-invalid', detail: `Correct this and send it again: ${path}: ${wants}.` }, { fields: [{ path, wants }] });
}

/** Where in the value the first such text stands, as a name or as a value; undefined when there is none. */
function unkeepable(value: unknown, path = ''): string | undefined {
  if (typeof value === 'string') return UNKEEPABLE.test(value) ? path || '(whole)' : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [name, part] of Object.entries(value)) {
    const found = unkeepable(name, path) ?? unkeepable(part, path ? `${path}.${name}` : name);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What the route was called with, validated by the contract: parameters, query and body in one object. */
export const Input = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const route = routeOf(context);
  const request = context.switchToHttp().getRequest<AskedRequest>();
  return { ...parsed(route.params, request.params), ...parsed(route.query, request.query), ...parsed(route.body, request.body) };
});

/** Who asks. A route that is not open always has one: the guard saw to it. */
export const By = createParamDecorator((_: unknown, context: ExecutionContext) => context.switchToHttp().getRequest<AskedRequest>().actor);
