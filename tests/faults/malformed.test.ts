import { readFileSync } from 'node:fs';
import { Agent, type IncomingHttpHeaders, request } from 'node:http';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';

/** The figure that is asked for is for 100 000: FAULTS_MALFORMED=100000. */
const MANY = Number(process.env['FAULTS_MALFORMED'] ?? 3000);

let folder: Folder;
let house: House;
const agent = new Agent({ keepAlive: true, maxSockets: 8 });
beforeEach(async () => {
  folder = new Folder();
  house = await (await House.start(folder)).ready();
  await house.firstRun();
});
afterEach(async () => {
  agent.destroy();
  await house.end('SIGKILL');
  await folder.remove();
});

interface Malformed {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: Buffer | string;
}
const json = (body: Buffer | string, headers = {}): Malformed => ({ path: '/api/lots', method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body });
/** One of each way in which a request can be wrong: types, sizes, encodings, numbers, marks, paths. */
const KINDS: readonly Malformed[] = [
  json(''), json('{'), json('{"key":'), json('nul'), json('NaN'), json('{"pieces":NaN}'), json('{"pieces":1e999}'), json(`{"pieces":${'9'.repeat(400)}}`), json('{"pieces":-0}'), json('[]'), json('null'), json('"text"'),
  json('{"lot":{"name":"\\u0000"}}'), json('{"lot":{"name":"\\ud800"}}'), json('{"lot":{"name":"\u202egnp"}}'), json('{"__proto__":{"admin":true}}'), json('{"constructor":{"prototype":{"x":1}}}'), json(`{"a":${'['.repeat(20_000)}`), json(`${'['.repeat(20_000)}${']'.repeat(20_000)}`),
  json(`{"key":"${'x'.repeat(300_000)}"}`), json(Buffer.from([0xff, 0xfe, 0x7b, 0x00])), json(Buffer.from('{"a":"\xe9"}', 'latin1')), json('{}', { 'content-type': 'application/json; charset=utf-16' }), json('{}', { 'content-type': 'application/json; charset=klingon' }),
  json('not gzip', { 'content-encoding': 'gzip' }), json(gzipSync('{"a":1}').subarray(0, 8), { 'content-encoding': 'gzip' }), json('{}', { 'content-encoding': 'rot13' }), json(gzipSync(`{"a":"${'0'.repeat(4_000_000)}"}`), { 'content-encoding': 'gzip' }),
  json('<a/>', { 'content-type': 'text/xml' }), json('a=1&b[c]=2', { 'content-type': 'application/x-www-form-urlencoded' }), json('--x\r\n\r\n--x--', { 'content-type': 'multipart/form-data; boundary=x' }), json('{}', { 'content-type': '' }),
  { path: '/api/../../../etc/passwd' }, { path: '/api/%2e%2e/%2e%2e/etc/passwd' }, { path: '/api/%00' }, { path: '/api/%c0%ae%c0%ae' }, { path: '/api/%' }, { path: '/api/pits/%E0%A4%A/fire' }, { path: `/api/${'a'.repeat(6000)}` },
  { path: '/api/checks?pitId[]=1&since[$gt]=0' }, { path: '/api/checks?since=%00&pitId=%27%3B--' }, { path: `/api/checks?${'a=1&'.repeat(1500)}` }, { path: '/api/records?from=NaN&until=Infinity' }, { path: '/api/lots', method: 'PUT', body: '{}' }, { path: '/api/lots', method: 'PATCH' },
  { path: '/api/lots', method: 'DELETE' }, { path: '/api/state', headers: { cookie: 'stokehold_device=%00; stokehold_session=\u00ff' } }, { path: '/api/state', headers: { authorization: `Bearer ${'x'.repeat(4000)}` } }, { path: '/api/pits/1/fire' }, { path: '/api/services/%27%20or%201=1/cost' },
];

interface Got {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly ms: number;
}
function send({ method = 'GET', path, headers, body }: Malformed): Promise<Got> {
  const begun = performance.now();
  return new Promise((done, failed) => {
    const asked = request(`${house.at}`, { agent, method, path, headers: { cookie: house.person.cookie, ...headers, ...(body !== undefined && { 'content-length': Buffer.byteLength(body) }) } }, (answer) => {
      answer.resume().once('end', () => done({ status: answer.statusCode ?? 0, headers: answer.headers, ms: performance.now() - begun }));
    });
    asked.once('error', failed).end(body);
  });
}
const residentMiB = () => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${house.pid}/status`, 'utf8'))?.[1]) / 1024;

it('malformed requests by the thousand are each refused as a problem, and the house is as it was', async () => {
  const lots = async () => (await house.get<{ wood: { lots: object[] } }>('/state')).wood.lots.length;
  for (const kind of KINDS) await send(kind);
  const before = residentMiB();
  const got: Got[] = [];
  const hand = async (first: number) => {
    for (let nth = first; nth < MANY; nth += 8) {
      const kind = KINDS[nth % KINDS.length]!;
      const one = await send(kind);
      const what = `${kind.method ?? 'GET'} ${kind.path.slice(0, 60)} ${String(kind.body ?? '').slice(0, 60)}`;
      expect([what, one.status >= 400 && one.status < 500, String(one.headers['content-type']).split(';')[0]]).toEqual([what, true, 'application/problem+json']);
      got.push(one);
    }
  };
  await Promise.all(Array.from({ length: 8 }, (_, nth) => hand(nth)));
  const p99 = got.map(({ ms }) => ms).sort((a, b) => a - b)[Math.floor(got.length * 0.99)]!;
  expect(await lots()).toBe(0);
  await house.ready();
  measured('R11', `${got.length} requests of ${KINDS.length} kinds: 0 of 500 and above, p99 ${p99.toFixed(0)} ms eight at a time, memory ${before.toFixed(0)} to ${residentMiB().toFixed(0)} MiB`);
});
