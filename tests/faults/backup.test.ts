import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Client } from 'pg';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';
import { OwnServer } from './own-server.js';

const folders: Folder[] = [];
let house: House | undefined;
let server: OwnServer | undefined;
let aside: string;
beforeEach(() => void (aside = mkdtempSync(join(tmpdir(), 'stokehold-backup-'))));
afterEach(async () => {
  await house?.end('SIGKILL');
  server?.remove();
  [house, server] = [undefined, undefined];
  for (const folder of folders.splice(0)) await folder.remove();
  rmSync(aside, { recursive: true, force: true });
});
const newFolder = () => {
  const folder = new Folder();
  folders.push(folder);
  return folder;
};

/** A command as an owner types it. */
function run(name: 'backup' | 'restore' | 'move', given: readonly string[], environment: Record<string, string>) {
  const { DATABASE_URL: _server, ...own } = process.env;
  const file = fileURLToPath(new URL(`../../apps/api/dist/backup/${name}-command.js`, import.meta.url));
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--no-warnings', file, ...given], { env: { ...own, ...environment }, encoding: 'utf8' });
  return { status, said: stdout + stderr };
}
const lot = (name: string) => ({ key: randomUUID(), pieces: 200, lot: { id: randomUUID(), name, species: 'white-oak', lengthM: 0.5, thicknessM: 0.12, moisture: 0.1 + 0.2, boughtAt: '2026-06-01T12:00:00Z', priceCents: 30_000 } });

/** A house with a yard, its manager on a tablet, and some lots; one of a name that is hard to carry. */
async function yard(folder: Folder): Promise<House> {
  const opened = await (await House.start(folder)).ready();
  await opened.firstRun();
  for (const name of ['West oak', 'ñ€ "quoted" \\N \u202e\n;--', '=1+1']) expect((await opened.post('/lots', lot(name))).status).toBe(201);
  return opened;
}
const lotsOf = async (one: House) => (await one.get<{ wood: { lots: { name: string; moisture: number }[] } }>('/state')).wood.lots.map(({ name, moisture }) => [name, moisture]);

it('R20: a backup taken while the house runs comes back on an empty folder, to the last digit, and the tablet is signed in as before', async () => {
  const [old, fresh] = [newFolder(), newFolder()];
  house = await yard(old);
  const before = await lotsOf(house);
  const file = join(aside, 'yard.backup');
  expect(run('backup', ['--to', file], { STOKEHOLD_DATA: old.path })).toMatchObject({ status: 0, said: expect.stringMatching(/\d+ tables, \d+ rows, as of/) });
  expect(statSync(file).mode & 0o077).toBe(0);
  await house.post('/lots', lot('after the backup'));
  await house.end('SIGKILL');
  const begun = Date.now();
  const restored = run('restore', ['--from', file], { STOKEHOLD_DATA: fresh.path });
  expect(restored).toMatchObject({ status: 0, said: expect.stringContaining('counts and sums are those of the backup') });
  house = (await (await House.start(fresh)).ready()).as(house.person);
  measured('R20', `restored and answering after ${((Date.now() - begun) / 1000).toFixed(1)} s`);
  expect(await lotsOf(house)).toEqual(before);
  expect((await house.post('/lots', lot('after the restore'))).status).toBe(201);
  const signedOn = await house.get<{ people: { id: string }[] }>('/sign-in');
  expect((await house.post('/sign-in', { personId: signedOn.people[0]!.id, pin: '480213' })).status).toBe(201);
});

it('a yard moves to the machine’s own, older PostgreSQL: counts and sums equal, the chain verifies, and the house runs on it', async () => {
  const folder = newFolder();
  server = await OwnServer.start();
  expect(server.version).toBeLessThan(18);
  house = await yard(folder);
  const before = await lotsOf(house);
  expect(run('move', ['--to', server.url], { STOKEHOLD_DATA: folder.path })).toMatchObject({ status: 2, said: expect.stringContaining('stop it first') });
  await house.end('SIGTERM');
  const moved = run('move', ['--to', server.url], { STOKEHOLD_DATA: folder.path });
  expect(moved).toMatchObject({ status: 0, said: expect.stringContaining('counts and sums are the same on both sides') });
  expect(run('move', ['--to', server.url], { STOKEHOLD_DATA: folder.path })).toMatchObject({ status: 2, said: expect.stringContaining('There is a house on this database already') });
  const { person } = house;
  house = (await (await House.start(folder, { DATABASE_URL: server.url })).ready()).as(person);
  expect(await lotsOf(house)).toEqual(before);
  expect((await house.post('/lots', lot('on the server'))).status).toBe(201);
  const verify = fileURLToPath(new URL('../../apps/api/dist/records/verify-command.js', import.meta.url));
  expect(spawnSync(process.execPath, ['--no-warnings', verify], { env: { ...process.env, DATABASE_URL: server.url }, encoding: 'utf8' }).stdout).toContain('each as it was written and in its place');
});

it.each([
  ['cut short', (file: string) => truncateSync(file, statSync(file).size - 40)],
  ['changed in the middle', (file: string) => { const bytes = readFileSync(file); bytes[Math.floor(bytes.length / 2)]! ^= 1; writeFileSync(file, bytes); }],
  ['another file', (file: string) => writeFileSync(file, 'not a backup')],
] as const)('a backup that is %s is refused before anything is written', async (_, harm) => {
  const [old, fresh] = [newFolder(), newFolder()];
  house = await yard(old);
  const file = join(aside, 'yard.backup');
  run('backup', ['--to', file], { STOKEHOLD_DATA: old.path });
  harm(file);
  server = await OwnServer.start();
  expect(run('restore', ['--from', file], { STOKEHOLD_DATA: fresh.path, DATABASE_URL: server.url })).toMatchObject({ status: 2, said: expect.stringContaining('is no whole backup') });
  const client = new Client({ connectionString: server.url });
  await client.connect();
  expect((await client.query(`select tablename from pg_tables where schemaname = 'public'`).finally(() => client.end())).rows).toEqual([]);
});
