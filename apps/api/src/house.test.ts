import { type INestApplication, RequestMethod } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants.js';
import { ModulesContainer } from '@nestjs/core';
import { problem, REFUSALS, type Route, routes } from '@stokehold/domain/contract';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import request from 'supertest';
import { type ColumnType, DataSource } from 'typeorm';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openHouse } from './house.js';
import { putSession } from './identity/cookies.js';

const name = `stokehold_test_${randomBytes(6).toString('hex')}`;
const dataFolder = mkdtempSync(join(tmpdir(), 'stokehold-house-'));
const onServer = async (sql: string) => {
  const client = new Client({ connectionString: inject('databaseServer') });
  await client.connect();
  await client.query(sql).finally(() => client.end());
};

let app: INestApplication;
let database: DataSource;
beforeAll(async () => {
  await onServer(`create database ${name}`);
  const url = new URL(inject('databaseServer'));
  url.pathname = `/${name}`;
  app = await openHouse({ databaseUrl: url.href, workers: 0, connections: 4, dataFolder });
  database = app.get(DataSource);
});
afterAll(async () => {
  await app.close();
  await onServer(`drop database if exists ${name} with (force)`);
  rmSync(dataFolder, { recursive: true, force: true });
});

/** What the framework holds, read from the controllers themselves: not from the decorator that made them. */
function registered(): string[] {
  const controllers = [...app.get(ModulesContainer).values()].flatMap((module) => [...module.controllers.values()]);
  return controllers.flatMap(({ metatype }) => {
    const methods = metatype?.prototype as Record<string, object>;
    return Object.getOwnPropertyNames(methods).flatMap((method) => {
      const path = Reflect.getMetadata(PATH_METADATA, methods[method]!) as string | undefined;
      const verb = Reflect.getMetadata(METHOD_METADATA, methods[method]!) as RequestMethod | undefined;
      return path === undefined || verb === undefined ? [] : [`${RequestMethod[verb]} /${path.replace(/^\//, '')}`];
    });
  });
}

describe('the ways in', () => {
  const DOCS = ['GET /openapi.json', 'GET /docs', 'GET /docs/look.css'];
  /** Read by calendar programs and by Prometheus, which speak no contract. */
  const TEXTS = ['GET /calendars/:file', 'GET /metrics'];

  it('every route of the contract is registered exactly once, and nothing else but the papers and two texts', () => {
    const wanted = Object.values(routes as Record<string, Route>).map(({ method, path }) => `${method} ${path}`);
    expect(registered().sort()).toEqual([...wanted, ...DOCS, ...TEXTS].sort());
  });

  it('no route but those that are open answers a stranger', async () => {
    for (const { method, path, may } of Object.values(routes as Record<string, Route>).filter((route) => route.may !== 'open')) {
      const address = `/api${path.replaceAll(/:\w+/g, '0190a1b2-0000-7000-8000-000000000000')}`;
      const { status, body } = await request(app.getHttpServer())[method === 'GET' ? 'get' : 'post'](address).send();
      expect([method, path, may, status]).toEqual([method, path, may, 401]);
      expect(problem.parse(body).code).toBe('device-unknown');
    }
  });

  it('an address that is not there, and a body that cannot be read, are problems by RFC 9457', async () => {
    const nowhere = await request(app.getHttpServer()).get('/api/nowhere').expect(404).expect('content-type', /application\/problem\+json/);
    expect(problem.parse(nowhere.body).code).toBe('not-found');
    const broken = await request(app.getHttpServer()).post('/api/first-run').set('content-type', 'application/json').send('{"half":').expect(400);
    expect(problem.parse(broken.body).code).toBe('input-invalid');
    const large = await request(app.getHttpServer()).post('/api/first-run').send({ token: 'x'.repeat(300_000) }).expect(400);
    expect(problem.parse(large.body).detail).toMatch(/256 kB/);
  });
});

describe('the headers of an answer', () => {
  const health = (more: Record<string, string> = {}) => request(app.getHttpServer()).get('/api/health').set(more);

  it('only what the house serves itself may run, and no other page may frame it or guess types', async () => {
    const { headers } = await health().expect(200);
    const policy = Object.fromEntries(String(headers['content-security-policy']).split(';').map((one) => [one.trim().split(' ')[0], one.trim().split(' ').slice(1)]));
    expect(policy).toMatchObject({ 'default-src': ["'self'"], 'script-src': ["'self'"], 'object-src': ["'none'"], 'base-uri': ["'none'"], 'frame-ancestors': ["'none'"], 'form-action': ["'self'"] });
    expect(JSON.stringify(policy)).not.toMatch(/unsafe/);
    expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'x-frame-options': 'DENY' });
    expect(headers).not.toHaveProperty('x-powered-by');
  });

  it('who came by HTTPS is told to come so for a year; who came plainly is not', async () => {
    expect((await health()).headers).not.toHaveProperty('strict-transport-security');
    expect((await health({ 'x-forwarded-proto': 'https' })).headers['strict-transport-security']).toBe('max-age=31536000');
  });

  it('what a proxy says is believed of one on this machine only', () => {
    const trusts = (app.getHttpAdapter().getInstance() as { get(name: string): (address: string, hop: number) => boolean }).get('trust proxy fn');
    expect(['127.0.0.1', '::1', '192.168.7.20', '203.0.113.9', '10.0.0.1'].map((address) => trusts(address, 0))).toEqual([true, true, false, false, false]);
  });

  it('the cookies are for this host, for no page to read, and by HTTPS only where it came so', () => {
    const put: string[] = [];
    const response = { append: (_: string, value: string) => put.push(value) };
    for (const secure of [true, false]) putSession({ secure, headers: {} }, response, 'abc');
    expect(put[0]).toMatch(/; HttpOnly; Secure; SameSite=Strict$/);
    expect(put[1]).not.toContain('Secure');
    for (const one of put) expect(one).not.toContain('Domain=');
  });
});

describe('the papers of the API', () => {
  /** https://spec.openapis.org/oas/v3.1.0: what 4.8.1, 4.8.9 to 4.8.16 call REQUIRED, for the objects that are used here. */
  it('the OpenAPI document has what version 3.1.0 requires', async () => {
    const { body: document } = await request(app.getHttpServer()).get('/api/openapi.json').expect(200);
    expect(document.openapi).toMatch(/^3\.1\.\d+$/);
    expect(document.info).toMatchObject({ title: expect.any(String), version: expect.any(String) });
    const operationIds: string[] = [];
    for (const [path, item] of Object.entries(document.paths as Record<string, Record<string, Operation>>)) {
      expect(path).toMatch(/^\//);
      for (const [method, operation] of Object.entries(item)) {
        expect(['get', 'post']).toContain(method);
        operationIds.push(operation.operationId);
        const inPath = operation.parameters.filter((parameter) => parameter.in === 'path');
        expect(inPath.map((parameter) => parameter.name).sort()).toEqual([...path.matchAll(/\{(\w+)\}/g)].map(([, named]) => named).sort());
        for (const parameter of inPath) expect(parameter).toMatchObject({ required: true, schema: expect.any(Object) });
        expect(Object.keys(operation.responses).length).toBeGreaterThan(0);
        for (const [status, answer] of Object.entries(operation.responses)) {
          expect(status).toMatch(/^[1-5]\d\d$/);
          expect(answer.description).toEqual(expect.any(String));
        }
        for (const need of operation.security) for (const scheme of Object.keys(need)) expect(document.components.securitySchemes).toHaveProperty(scheme);
      }
    }
    expect(new Set(operationIds).size).toBe(operationIds.length);
    expect(operationIds.sort()).toEqual(Object.keys(routes).sort());
    for (const [, reference] of JSON.stringify(document).matchAll(/"\$ref":"(#[^"]*)"/g)) expect([reference, resolved(document, reference!)]).not.toContain(undefined);
  });

  it('the page names every route and has every refusal at the address that a problem gives', async () => {
    const { text } = await request(app.getHttpServer()).get('/api/docs').expect(200).expect('content-type', /text\/html/);
    for (const code of Object.keys(REFUSALS)) expect(text).toContain(`id="${code}"`);
    for (const { method, path } of Object.values(routes as Record<string, Route>)) expect(text).toContain(`${method} /api${path}`);
    expect(text).not.toMatch(/https?:\/\//);
  });
});

interface Operation {
  readonly operationId: string;
  readonly parameters: readonly { readonly name: string; readonly in: string }[];
  readonly responses: Record<string, { readonly description?: string }>;
  readonly security: readonly object[];
}
const resolved = (document: object, reference: string): unknown =>
  reference.slice(2).split('/').reduce<unknown>((at, part) => (at as Record<string, unknown> | undefined)?.[part.replaceAll('~1', '/').replaceAll('~0', '~')], document);

describe('the tables', () => {
  const tables = async () =>
    ((await database.query("select table_name from information_schema.tables where table_schema = 'public' order by 1")) as { table_name: string }[]).map(
      ({ table_name }) => table_name,
    );

  it('every row that the house knows has the columns, types and gaps of its table', async () => {
    const stored = (await database.query(
      "select table_name, column_name, data_type, udt_name, is_nullable from information_schema.columns where table_schema = 'public'",
    )) as { table_name: string; column_name: string; data_type: string; udt_name: string; is_nullable: string }[];
    expect(database.entityMetadatas.length).toBeGreaterThan(15);
    for (const { tableName, columns } of database.entityMetadatas) {
      for (const column of columns) {
        const at = `${tableName}.${column.databaseName}`;
        const found = stored.find(({ table_name, column_name }) => table_name === tableName && column_name === column.databaseName);
        expect([at, found?.column_name]).toEqual([at, column.databaseName]);
        const type = database.driver.normalizeType(column);
        const storedType = database.driver.normalizeType({ type: (found?.data_type === 'ARRAY' ? found.udt_name.slice(1) : found?.data_type) as ColumnType });
        expect([at, storedType, found?.data_type === 'ARRAY', found?.is_nullable]).toEqual([at, type, column.isArray, column.isNullable ? 'YES' : 'NO']);
      }
      const key = columns.filter(({ isPrimary }) => isPrimary).map(({ databaseName }) => databaseName).sort();
      const storedKey = (await database.query(
        `select attname from pg_index join pg_attribute on attrelid = indrelid and attnum = any (indkey) where indrelid = $1::regclass and indisprimary order by 1`,
        [tableName],
      )) as { attname: string }[];
      expect([tableName, storedKey.map(({ attname }) => attname)]).toEqual([tableName, key]);
    }
  });

  it('the way down leaves nothing but the list of migrations, and the way up works again', async () => {
    const before = await tables();
    for (const _ of database.migrations) await database.undoLastMigration({ transaction: 'all' });
    expect(await tables()).toEqual(['migrations']);
    const left = (await database.query(
      "select relname from pg_class where relnamespace = 'public'::regnamespace and relkind in ('r', 'v', 'm', 'S', 'p') and relname not like 'migrations%'",
    )) as object[];
    expect(left).toEqual([]);
    await database.runMigrations({ transaction: 'all' });
    expect(await tables()).toEqual(before);
  });
});
