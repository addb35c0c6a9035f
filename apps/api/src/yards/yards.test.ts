import { type CrewMember, type PitSettings, setup } from '@stokehold/domain/contract';
import { later, type PersonId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Yards, YardsModule } from './index.js';

let house: TestHouse;
let managerId: PersonId;
let otherYard: string;
beforeAll(async () => {
  house = await openTestHouse([YardsModule]);
  managerId = house.actor!.person!.id;
  otherYard = randomUUID();
  await house.database.query(
    `insert into yard select $1, 'Elsewhere', time_zone, units, language, 10, 10, 0, 1, 1, 1.2, 1.4, 5, false, 0, created_at from yard limit 1`, [otherYard],
  );
});
afterAll(() => house.close());

const send = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const read = async () => setup.strict().parse((await request(house.app.getHttpServer()).get('/api/setup').expect(200)).body);
const refusal = (code: string) => ({ body }: { body: { code: string } }) => expect(body.code).toBe(code);
const probe = (name: string, zone: number) => ({ id: randomUUID(), name, zone });
const pitOf = (name: string, more: object = {}) => ({
  id: randomUUID(), name, xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.4, chamberDiameterM: 0.8, fireboxLengthM: 0.6, fireboxDiameterM: 0.6,
  steelThicknessM: 0.008, stackHeightM: 1.4, stackDiameterM: 0.16, zones: [{ lengthM: 0.8 }, { lengthM: 0.7 }, { lengthM: 0.9 }], probes: [probe('fire end', 0), probe('stack end', 2)],
  band: { lowC: 118, highC: 124 }, retired: false, ...more,
});
const personOf = (name: string, more: Partial<CrewMember> = {}) => ({ id: randomUUID(), name, role: 'crew', language: 'es', skills: ['fire', 'saw'], rateCentsPerHour: 2200, left: false, ...more });
const pitNamed = async (name: string) => (await read()).pits.find((pit) => pit.name === name) as PitSettings;
const personNamed = async (name: string) => (await read()).crew.find((person) => person.name === name);

const settings = {
  name: 'Heron Flats', timeZone: 'America/Denver', units: 'metric', language: 'es', planWidthM: 30, planHeightM: 20, planTopDeg: 45, woodPlace: { xM: 2, yM: 18 },
  walkSpeedMPerS: 1.1, screenDiagonalM: 1.6, viewDistanceM: 6,
};

it('the yard is changed once for the same key, and is read as it was written', async () => {
  const command = { key: randomUUID(), yard: settings };
  for (let i = 0; i < 2; i++) await send('/yard', command).expect(201);
  expect((await read()).yard).toEqual({ ...settings, id: house.yardId, practice: false });
  const told = await house.database.query(`select 1 from outbox where event->>'kind' = 'yard-set-up'`);
  expect(told).toHaveLength(1);
  const placed = { ...settings, place: { latitudeDeg: 39.5, longitudeDeg: -105.25 } };
  await send('/yard', { yard: placed }).expect(201);
  expect((await read()).yard).toEqual({ ...placed, id: house.yardId, practice: false });
  await send('/yard', { yard: { ...settings, place: { latitudeDeg: 39.5 } } }).expect(400).expect(refusal('input-invalid'));
  await send('/yard', { yard: settings }).expect(201);
  expect((await read()).yard).not.toHaveProperty('place');
  await send('/yard', { ...command, yard: { ...settings, name: 'Another' } }).expect(422).expect(refusal('key-reused'));
});

it('a time zone that the time zone database does not know is refused by its field', async () => {
  const answer = await send('/yard', { yard: { ...settings, timeZone: 'America/Barbecue' } }).expect(400).expect(refusal('input-invalid'));
  expect(answer.body.fields).toMatchObject([{ path: 'yard.timeZone' }]);
  expect((await read()).yard.timeZone).toBe('America/Denver');
});

it('a pit is read as it was written, zones from the fire end, and changed by its id', async () => {
  const pit = pitOf('Long Tom');
  await send('/pits', { pit }).expect(201);
  expect(await pitNamed('Long Tom')).toEqual(pit);
  const changed = { ...pit, name: 'Short Tom', zones: [{ lengthM: 1.2 }, { lengthM: 1.1 }, { lengthM: 0.4 }], band: { lowC: 121, highC: 127 } };
  await send('/pits', { pit: changed }).expect(201);
  expect(await pitNamed('Short Tom')).toEqual(changed);
  expect((await read()).pits).toHaveLength(1);
  expect(await house.app.get(Yards).pit(house.database.manager, pit.id as never, house.yardId)).toEqual(changed);
  await expect(house.app.get(Yards).pit(house.database.manager, pit.id as never, otherYard as never)).rejects.toMatchObject({ refusal: { code: 'pit-unknown' } });
});

it('a probe taken away keeps its readings, and comes back under its id', async () => {
  const pit = pitOf('Widow');
  await send('/pits', { pit }).expect(201);
  const [fireEnd, stackEnd] = pit.probes;
  await house.database.query('select keep_reading_month(now())');
  await house.database.query(`insert into reading (probe_id, device_taken_at, taken_at, temp_c, arrived_at) values ($1, now(), now(), 120, now())`, [stackEnd!.id]);
  await send('/pits', { pit: { ...pit, probes: [fireEnd] } }).expect(201);
  expect((await pitNamed('Widow')).probes).toEqual([fireEnd]);
  expect(await house.database.query('select removed from probe join reading on probe_id = id where id = $1', [stackEnd!.id])).toEqual([{ removed: true }]);
  await send('/pits', { pit }).expect(201);
  expect((await pitNamed('Widow')).probes).toEqual(pit.probes);
});

it('a pit is changed while a reading of its probe is being kept: neither waits for the other', async () => {
  const pit = pitOf('Kestrel');
  await send('/pits', { pit }).expect(201);
  const reading = house.database.createQueryRunner();
  await reading.startTransaction();
  // What the database takes for a row that refers to this one.
  await reading.query('select 1 from probe where id = $1 for key share', [pit.probes[0]!.id]);
  await reading.query('select 1 from pit where id = $1 for key share', [pit.id]);
  await send('/pits', { pit: { ...pit, xM: 7 } }).expect(201);
  await reading.query('select 1 from yard where id = $1 for no key update', [house.yardId]);
  await reading.commitTransaction();
  await reading.release();
  expect((await pitNamed('Kestrel')).xM).toBe(7);
});

it('names are given once in a yard, whatever their case', async () => {
  await send('/pits', { pit: pitOf('Ash Lady') }).expect(201);
  await send('/pits', { pit: pitOf('ASH LADY') }).expect(409).expect(refusal('name-taken'));
  await send('/pits', { pit: pitOf('Two probes', { probes: [probe('one', 0), probe('One', 1)] }) }).expect(409).expect(refusal('name-taken'));
  await send('/crew', { person: personOf('Bel') }).expect(201);
  await send('/crew', { person: personOf('bel') }).expect(409).expect(refusal('name-taken'));
});

it('what belongs to another yard or pit is not taken over', async () => {
  const pit = pitOf('Mine');
  await send('/pits', { pit }).expect(201);
  await send('/pits', { pit: pitOf('Thief', { probes: [pit.probes[0]] }) }).expect(409).expect(refusal('id-taken'));
  const foreignPit = randomUUID();
  await house.database.query(`insert into pit select $1, $2, 'Foreign', x_m, y_m, fire_end, fire_end_heading_deg, chamber_length_m, chamber_diameter_m, firebox_length_m, firebox_diameter_m, steel_thickness_m, stack_height_m, stack_diameter_m, band_low_c, band_high_c, false from pit where id = $3`, [foreignPit, otherYard, pit.id]);
  await send('/pits', { pit: pitOf('Grab', { id: foreignPit }) }).expect(409).expect(refusal('id-taken'));
  const foreignPerson = randomUUID();
  await house.database.query(`insert into crew_member values ($1, $2, 'Stranger', 'manager', 'en', 0, null, false)`, [foreignPerson, otherYard]);
  await send('/crew', { person: personOf('Grab', { id: foreignPerson as PersonId }) }).expect(409).expect(refusal('id-taken'));
  expect(await house.database.query('select name, yard_id from crew_member where id = $1', [foreignPerson])).toEqual([{ name: 'Stranger', yard_id: otherYard }]);
});

it('a probe needs a zone, and a zone in which something lies stays', async () => {
  const pit = pitOf('Zoned');
  await send('/pits', { pit: { ...pit, probes: [probe('far', 3)] } }).expect(409).expect(refusal('zone-unknown'));
  await send('/pits', { pit }).expect(201);
  const cook = randomUUID();
  await house.database.query(`insert into cook values ($1, $2, null, 'shoulder', 'round', 4, 20, null, null, null, null)`, [cook, house.yardId]);
  await house.database.query(`insert into placement values ($1, $2, $3, 2, 4, now(), null)`, [randomUUID(), cook, pit.id]);
  const shorter = { ...pit, zones: pit.zones.slice(0, 2), probes: [] };
  await send('/pits', { pit: shorter }).expect(409).expect(refusal('zone-in-use'));
  await house.database.query('update placement set until_at = now() where cook_id = $1', [cook]);
  await send('/pits', { pit: shorter }).expect(201);
});

it('a pit that burns in the running shift is not retired, before and after it is', async () => {
  const pit = pitOf('Burner');
  await send('/pits', { pit }).expect(201);
  const shift = randomUUID();
  await house.database.query('insert into shift values ($1, $2, $3, $4)', [shift, house.yardId, toIso(later(house.now, 3600)), toIso(later(house.now, 12 * 3600))]);
  await house.database.query('insert into shift_pit values ($1, $2, 118, 124, $3)', [shift, pit.id, toIso(house.now)]);
  await send('/pits', { pit: { ...pit, retired: true } }).expect(409).expect(refusal('pit-burning'));
  await house.database.query('update shift set starts_at = $2, ends_at = $3 where id = $1', [shift, toIso(later(house.now, -7200)), toIso(house.now)]);
  await send('/pits', { pit: { ...pit, retired: true } }).expect(201);
  expect((await pitNamed('Burner')).retired).toBe(true);
});

it('a crew member is read as written, a PIN is set, stays with a change, and is reset', async () => {
  const person = personOf('Ines');
  const command = { key: randomUUID(), person, pin: '730194' };
  for (let i = 0; i < 2; i++) await send('/crew', command).expect(201);
  expect(await personNamed('Ines')).toEqual({ ...person, hasPin: true });
  const hash = async () => (await house.database.query('select pin_hash from crew_member where id = $1', [person.id]))[0].pin_hash as string;
  const first = await hash();
  await send('/crew', { person: { ...person, skills: ['food'], role: 'lead' } }).expect(201);
  expect(await personNamed('Ines')).toMatchObject({ skills: ['food'], role: 'lead', hasPin: true });
  expect(await hash()).toBe(first);
  await send('/crew', { person, pin: '730195' }).expect(201);
  expect(await hash()).not.toBe(first);
  await send('/crew', { ...command, pin: '730196' }).expect(422).expect(refusal('key-reused'));
  const [everything] = await house.database.query(`select (select string_agg(a::text, '') from audit_entry a) || (select string_agg(k::text, '') from command_key k) as text`);
  expect(everything.text).not.toMatch(/73019[456]/);
});

it.each(['1234', '123456', '777777', '98765a', 'eleven char', 'aaaaaaaaaaaaaaaa', 'password12345', 'my stokehold 7', 'x'.repeat(101)])('%s is no PIN and no password', async (pin) => {
  await send('/crew', { person: personOf(`No ${pin}`), pin }).expect(400).expect(refusal('input-invalid'));
});

it('a password of twelve characters stands where a PIN may, and nowhere in words', async () => {
  const words = 'four dry splits, please';
  await send('/crew', { person: personOf('Desk'), pin: words }).expect(201);
  expect(await personNamed('Desk')).toMatchObject({ hasPin: true });
  const [everything] = (await house.database.query(`select (select string_agg(t::text, '') from command_key t) || (select string_agg(t::text, '') from audit_entry t) || (select string_agg(t::text, '') from crew_member t) as text`)) as { text: string }[];
  expect(everything!.text).not.toContain(words);
});

it('the last manager who can sign in stays one', async () => {
  const manager = { id: managerId, name: 'Renske', role: 'manager', language: 'en', skills: [], rateCentsPerHour: 3100, left: false };
  await send('/crew', { person: { ...manager, left: true } }).expect(409).expect(refusal('last-manager'));
  await send('/crew', { person: { ...manager, role: 'lead' } }).expect(409).expect(refusal('last-manager'));
  const second = personOf('Odd', { role: 'manager' });
  await send('/crew', { person: second }).expect(201);
  await send('/crew', { person: { ...manager, role: 'lead' } }).expect(409).expect(refusal('last-manager'));
  await send('/crew', { person: second, pin: '506172' }).expect(201);
  await send('/crew', { person: { ...manager, role: 'lead' } }).expect(201);
});

it('somebody who has left loses every session at once', async () => {
  const person = personOf('Leaver');
  await send('/crew', { person, pin: '506172' }).expect(201);
  await house.database.query(`insert into session values ('\\x01', $1, $2, now(), now(), null)`, [house.actor!.device.id, person.id]);
  await send('/crew', { person: { ...person, left: true } }).expect(201);
  expect(await house.database.query('select ended_at is not null as ended from session')).toEqual([{ ended: true }]);
});
