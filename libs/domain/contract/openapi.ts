import { z } from 'zod';
import { problem, REFUSALS } from './problem.js';
import type { Route } from './route.js';
import { routes } from './routes.js';

type Json = Record<string, unknown>;
const jsonSchema = (schema: z.ZodType, io: 'input' | 'output'): Json => {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12', io, unrepresentable: 'any' });
  return rest;
};

const parameters = (where: 'path' | 'query', schema: z.ZodType | undefined): Json[] => {
  if (!schema) return [];
  const { properties = {}, required = [] } = jsonSchema(schema, 'input') as { properties?: Json; required?: string[] };
  return Object.entries(properties).map(([name, s]) => ({ name, in: where, required: where === 'path' || required.includes(name), schema: s }));
};

function operation(name: string, route: Route): Json {
  const statuses = new Map<number, string[]>();
  const codes = ['input-invalid', ...(route.may === 'open' ? [] : ['not-signed-in', 'not-allowed', 'device-too-fast']), ...route.refusals] as const;
  for (const code of codes) {
    const status = REFUSALS[code as keyof typeof REFUSALS];
    statuses.set(status, [...(statuses.get(status) ?? []), code]);
  }
  const problems = [...statuses].map(([status, all]) => [
    String(status),
    { description: all.join(', '), content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } } },
  ]);
  const success = route.method === 'POST' ? '201' : '200';
  return {
    operationId: name,
    summary: route.summary,
    description: `Asks for: ${route.may}.`,
    parameters: [...parameters('path', route.params), ...parameters('query', route.query)],
    ...(route.body && { requestBody: { required: true, content: { 'application/json': { schema: jsonSchema(route.body, 'input') } } } }),
    responses: {
      [success]: { description: 'Done', content: { 'application/json': { schema: jsonSchema(route.reply, 'output') } } },
      ...Object.fromEntries(problems),
    },
    security: route.may === 'open' ? [] : [{ device: [] }],
  };
}

/** The OpenAPI 3.1 document of every route, made from the schemas that the server validates with. */
export function openApi(version: string): Json {
  const paths: Record<string, Json> = {};
  for (const [name, route] of Object.entries(routes as Record<string, Route>)) {
    const path = `/api${route.path.replaceAll(/:([A-Za-z]+)/g, '{$1}')}`;
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return {
    openapi: '3.1.0',
    info: { title: 'Stokehold', version, description: 'Plans the night of several wood-burning pits, keeps it on plan, and shows what it cost.' },
    paths,
    components: {
      schemas: { Problem: jsonSchema(problem, 'output') },
      securitySchemes: { device: { type: 'apiKey', in: 'cookie', name: 'stokehold_device' } },
    },
  };
}
