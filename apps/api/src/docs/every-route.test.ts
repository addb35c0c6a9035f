import { Validator } from '@seriousme/openapi-schema-validator';
import { openApi, problem } from '@stokehold/domain/contract';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { randomUUID } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AppModule } from '../app.module.js';
import { VERSION } from '../health/index.js';
import { Enrolment } from '../identity/index.js';
import { openTestHouseOf, type OpenedHouse } from '../platform/testing.js';
import { type PracticeNight, PracticeNights, readSample } from '../practice/index.js';
import { type Query } from '../records/stored.js';
import { verifyRecords } from '../records/verify.js';
import { type Ground, type Schema, taken, twisted } from './testing.js';

/** More of them are tried with FUZZ_RUNS, others with FUZZ_SEED. */
const RUNS = Number(process.env['FUZZ_RUNS'] ?? 8);
const SEED = Number(process.env['FUZZ_SEED'] ?? 1790);
const HOURS_IN = 2;

interface Operation {
  readonly operationId: string;
  readonly parameters: readonly { readonly name: string; readonly in: 'path' | 'query'; readonly required: boolean; readonly schema: Schema }[];
  readonly requestBody?: { readonly content: { readonly 'application/json': { readonly schema: Schema } } };
  readonly responses: Readonly<Record<string, { readonly content: Readonly<Record<string, { readonly schema: object }>> }>>;
}
const document = openApi(VERSION) as { readonly paths: Record<string, Record<string, Operation>>; readonly components: object };
const operations = Object.entries(document.paths).flatMap(([path, item]) => Object.entries(item).map(([method, operation]) => ({ path, method, operation, name: operation.operationId })));

let house: OpenedHouse;
let night: PracticeNight;
let manager: string;
let ground: Ground;
/** A yard beside this one, whose ids are drawn as well: nothing of it is shown or changed. */
let other: string;
const OTHER = 'Farther Yard';

/** A practice night that has run for a while: fires burn, food lies, wood was moved, work is planned. */
beforeAll(async () => {
  house = await openTestHouseOf((databaseUrl, dataFolder) => AppModule.on({ databaseUrl, workers: 0, connections: 4, dataFolder }));
  const sample = readSample(fileURLToPath(new URL('../../../../infra/sample/brackwater.json', import.meta.url)));
  const pits = sample.pits.slice(0, 2);
  const stands = ({ pit }: { pit: string }) => pits.some(({ name }) => name === pit);
  const small = { ...sample, pits, carts: sample.carts.filter(stands), cooks: sample.cooks.filter(({ lies }) => lies.every(stands)) };
  const elsewhere = await house.app.get(PracticeNights).openStill({ ...small, yard: { ...sample.yard, name: OTHER }, lots: small.lots.map((lot) => ({ ...lot, name: `${OTHER} ${lot.name}` })), carts: [] }, 8);
  other = elsewhere.yard.yardId;
  night = await house.app.get(PracticeNights).openStill(small, 7);
  while (night.at < night.yard.startsAt + HOURS_IN * 3600) await night.minute();
  await night.settle();
  manager = night.yard.lead.person!.id;
  ground = { ids: await idsThere(), nowS: night.at };
}, 120_000);
afterAll(() => house.close());

const ask = async <T>(sql: string, values: unknown[] = []) => (await house.database.query(sql, values)) as T[];

async function idsThere(): Promise<string[]> {
  const all: string[] = [];
  for (const table of ['pit', 'lot', 'cook', 'service', 'shift', 'task', 'probe', 'crew_member', 'device', 'alarm', 'fire_check', 'food_entry'])
    all.push(...(await ask<{ id: string }>(`select id::text from ${table} order by id limit 16`)).map(({ id }) => id));
  return all;
}

/** Signs the manager in anew: what was drawn before may have signed out, sent away or stood down. */
async function signedIn(): Promise<string> {
  await house.database.query(`update crew_member set role = 'manager', has_left = false where id = $1`, [manager]);
  const enrolment = house.app.get(Enrolment);
  const { deviceId, token } = await enrolment.addDevice(house.database.manager, { yardId: night.yard.yardId, kind: 'hand', name: 'Desk' });
  return `stokehold_device=${token}; stokehold_session=${await enrolment.beginSession(house.database.manager, deviceId, manager as never)}`;
}

/** The same of what belongs to the other yard. */
async function keptElsewhere(): Promise<unknown> {
  const names = (await ask<{ name: string }>(`select table_name as name from information_schema.columns where table_schema = 'public' and column_name = 'yard_id' and table_name not in ('device', 'session') order by 1`)).map(({ name }) => name);
  return ask(names.map((name) => `select '${name}' as name, count(*)::int as rows, sum(xmin::text::bigint) as all from "${name}" where yard_id = $1`).join(' union all ') + ' order by name', [other]);
}

let tables: string[] | undefined;
/** Everything that is kept, as a number of rows and the newest writing of each table. Who was seen when, and tries of a PIN, are kept of a refused request too; a process says every few seconds how it stands. */
async function kept(): Promise<unknown> {
  const beside = ['device', 'session', 'pin_failure', 'house_process', 'migrations'];
  tables ??= (await ask<{ name: string }>(`select table_name as name from information_schema.tables where table_schema = 'public' and table_type = 'BASE TABLE'`)).map(({ name }) => name).filter((name) => !beside.includes(name));
  return ask(tables.map((name) => `select '${name}' as name, count(*)::int as rows, max(xmin::text::bigint) as newest, sum(xmin::text::bigint) as all from "${name}"`).join(' union all ') + ' order by name');
}

interface Drawn {
  readonly at: Record<string, unknown>;
  readonly body: unknown;
}
const requests = (operation: Operation, how: typeof taken): fc.Arbitrary<Drawn> => {
  const at = fc.record(Object.fromEntries(operation.parameters.map(({ name, schema }) => [name, how(schema, ground)])), { requiredKeys: operation.parameters.filter(({ required }) => required).map(({ name }) => name) });
  const schema = operation.requestBody?.content['application/json'].schema;
  const body = schema ? fc.tuple(how(schema, ground), fc.uuid({ version: 4 })).map(([value, key]) => (isObject(value) && typeof value['key'] === 'string' && how === taken ? { ...value, key } : value)) : fc.constant(undefined);
  return fc.record({ at, body }) as fc.Arbitrary<Drawn>;
};
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
/** As a browser writes it in an address: half a letter becomes the sign for what cannot be read. */
const inAddress = (value: unknown) => encodeURIComponent(Buffer.from(typeof value === 'string' ? value : (JSON.stringify(value) ?? '')).toString());

function send({ path, method, operation }: (typeof operations)[number], { at, body }: Drawn, cookie: string) {
  const address = path.replace(/\{(\w+)\}/g, (_, name: string) => inAddress(at[name]));
  const query = operation.parameters.filter(({ in: where, name }) => where === 'query' && name in at).map(({ name }) => `${name}=${inAddress(at[name])}`).join('&');
  const http = request(house.app.getHttpServer());
  const asked = (method === 'get' ? http.get(`${address}?${query}`) : http.post(`${address}?${query}`)).set('Cookie', cookie);
  return body === undefined ? asked : asked.set('content-type', 'application/json').send(JSON.stringify(body));
}

const ajv = new Ajv2020({ strict: false, allErrors: true });
addFormats.default(ajv);
/** What an answer has wrong, held to the document: its status is named there, its type and its shape are those of that status. */
function wrongWith(operation: Operation, answer: request.Response): string[] {
  const said = operation.responses[String(answer.status)];
  if (!said) return [`status ${answer.status} is not in the document: ${answer.text}`];
  const [type, { schema }] = Object.entries(said.content)[0]!;
  if (!String(answer.headers['content-type']).startsWith(type)) return [`${answer.headers['content-type']} instead of ${type}`];
  if (answer.status >= 400) return problem.safeParse(answer.body).success ? [] : [`no problem: ${answer.text}`];
  const holds = ajv.compile({ ...(schema as object), components: document.components });
  return holds(answer.body) ? [] : (holds.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

it('the document of the API is OpenAPI 3.1 by the schema that its authors publish', async () => {
  // https://spec.openapis.org/oas/3.1/schema: the validator brings that schema along.
  const answer = await new Validator().validate(structuredClone(document) as never);
  expect(answer).toMatchObject({ valid: true });
  const broken = await new Validator().validate({ ...structuredClone(document), paths: { 'no-slash': {} } } as never);
  expect(broken.valid).toBe(false);
});

describe('what the database cannot keep, or keeps already', () => {
  const lot = (name: string, id: string = randomUUID()) => ({ key: randomUUID(), pieces: 20, lot: { id, name, species: 'white-oak', lengthM: 0.5, thicknessM: 0.12, moisture: 0.22, boughtAt: '2026-06-01T12:00:00Z', priceCents: 30_000 } });
  const buy = async (body: object) => send(operations.find(({ name }) => name === 'buyLot')!, { at: {}, body }, await signedIn());

  it.each(['a\0b', '\ud800', 'x\udfff'])('a name with the empty character or half of one is refused, and the field is named: %j', async (name) => {
    const { status, body } = await buy(lot(name));
    expect([status, problem.parse(body).fields?.[0]?.path]).toEqual([400, 'lot.name']);
  });

  it('a new thing with the id of one that is there is refused, of the same yard or another', async () => {
    const first = lot('Pecan of June');
    expect((await buy(first)).status).toBe(201);
    const [far] = await ask<{ id: string }>('select id from lot where yard_id = $1 limit 1', [other]);
    for (const id of [first.lot.id, far!.id]) expect(problem.parse((await buy(lot('Another pecan', id))).body).code).toBe('id-taken');
  });
});

describe.each([
  { what: 'requests that the document allows', how: taken },
  { what: 'requests twisted out of shape', how: twisted },
])('$what', ({ how }) => {
  it.each(operations)('$name: an answer of the document, never a fault; a refusal keeps nothing; what was taken is carried', async (one) => {
    await fc.assert(
      fc.asyncProperty(requests(one.operation, how), async (drawn) => {
        const cookie = await signedIn();
        await night.settle();
        const [before, elsewhere] = [await kept(), await keptElsewhere()];
        const answer = await send(one, drawn, cookie);
        expect(wrongWith(one.operation, answer)).toEqual([]);
        if (answer.status >= 400 && one.name !== 'signIn') expect(await kept()).toEqual(before);
        expect(answer.text).not.toContain(OTHER);
        await night.settle();
        expect(await keptElsewhere()).toEqual(elsewhere);
        expect(await ask('select seq, event from outbox where done_at is null')).toEqual([]);
      }),
      { numRuns: RUNS, seed: SEED, endOnFailure: true },
    );
  }, 600_000);
});

it.each(operations.filter(({ method }) => method === 'get'))('a question changes nothing: $name', async (one) => {
  await fc.assert(
    fc.asyncProperty(requests(one.operation, taken), async (drawn) => {
      const cookie = await signedIn();
      const before = await kept();
      await send(one, drawn, cookie);
      expect(await kept()).toEqual(before);
    }),
    { numRuns: 4, seed: SEED, endOnFailure: true },
  );
});

it('after all of it the record verifies, entry by entry and row by row', async () => {
  await house.database.query('update yard set practice = false');
  const runner = house.database.createQueryRunner();
  const query: Query = async (sql, values) => (await runner.query(sql, values)) as never;
  const yards = await verifyRecords(query).finally(() => runner.release());
  for (const yard of yards) expect(yard).toMatchObject({ breaks: [], facts: [] });
  expect(yards.find(({ yardId }) => yardId === night.yard.yardId)!.entries).toBeGreaterThan(operations.length);
});
