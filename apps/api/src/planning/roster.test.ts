import { rosterView, shiftView, type RosterView } from '@stokehold/domain/contract';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sameIds, type TestHouse } from '../platform/testing.js';
import { asking, at, band, night, on, openPlanningHouse, rest } from './testing.js';

const [ana, bo, bess, nell, service] = sameIds(5) as [string, string, string, string, string];
let house: TestHouse;
let ask: ReturnType<typeof asking>;
beforeAll(async () => {
  house = await openPlanningHouse({ Ana: ana, Bo: bo }, { Bess: bess, Nell: nell });
  ask = asking(house);
});
afterAll(async () => {
  await house.settle();
  await house.close();
});

const coming = async () => ((await ask.get('/shifts')) as unknown[]).map((one) => shiftView.strict().parse(one));
const tomorrow = { ...night([], [bess, nell]), startsAt: at(24), endsAt: at(36), people: [{ personId: ana, startsAt: at(24), endsAt: at(30), breaks: [rest(randomUUID(), 26, 27)] }], pits: [bess, nell].map((pitId) => ({ pitId, band, lightAt: at(24.5) })) };
const roster = async (): Promise<RosterView> => rosterView.strict().parse(await ask.get(`/shifts/${tomorrow.id}/roster`));

it('shifts to come are listed, the one that runs first, and none that is over', async () => {
  expect(await coming()).toEqual([]);
  const tonight = night([on(bo)], [bess]);
  await ask.post('/shifts', tomorrow);
  await ask.post('/shifts', tonight);
  expect((await coming()).map(({ id, startsAt }) => [id, startsAt])).toEqual([[tonight.id, at(0)], [tomorrow.id, at(24)]]);
  expect((await coming())[1]?.people.map(({ name, presence }) => [name, presence])).toEqual([['Ana', 'not-yet']]);
});

it('tomorrow says how many people each hour needs, by skill, who is there, and what would mend it', async () => {
  const { hours, shift, supposed } = await roster();
  expect(shift.id).toBe(tomorrow.id);
  expect(hours).toHaveLength(12);
  expect(hours[4]).toMatchObject({ fromAt: at(28), untilAt: at(29), needed: 1, present: 1, fails: false, mend: 'none' });
  expect(hours[8]).toMatchObject({ needed: 1, present: 0, fails: true, missingPeople: 1 });
  expect(hours[8]?.mend).not.toBe('none');
  expect(hours[8]?.bySkill.find(({ skill }) => skill === 'fire')).toMatchObject({ needed: 1, present: 0 });
  expect(supposed).toEqual([]);
});

it('a service brings the usual work of its cooks, until somebody plans it', async () => {
  await house.database.query(`insert into service values ($1, $2, 'Lunch', $3, 80)`, [service, house.yardId, at(38)]);
  await house.database.query(`insert into cook (id, yard_id, service_id, cut, shape, pieces, weight_kg, comes_off_at) values ($1, $2, $3, 'Brisket', 'slab', 8, 48, $4)`, [randomUUID(), house.yardId, service, at(34)]);
  const { hours, supposed } = await roster();
  expect(supposed.map(({ kind, cut, at: when }) => [kind, cut, when])).toEqual([['load', 'Brisket', at(24.5 + 105 / 60)], ['unload', 'Brisket', at(34)]]);
  expect(hours.some(({ bySkill }) => bySkill.some(({ skill, needed }) => skill === 'food' && needed >= 1))).toBe(true);
  await ask.post('/tasks', { id: randomUUID(), kind: 'unload', pitId: bess, earliestAt: at(33), dueAt: at(34), latestAt: at(35), lengthS: 900, people: 2 });
  expect((await roster()).supposed.map(({ kind }) => kind)).toEqual(['load']);
});

it('a shift that nobody knows has no roster', async () => {
  expect((await ask.get(`/shifts/${randomUUID()}/roster`, {}, 404)).code).toBe('shift-unknown');
});
