import { probeCourses, type ProbesView, probesView } from '@stokehold/domain/contract';
import { epochS, later, type PitId, randomStream, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Readings, ReadingsModule } from './index.js';
import { Thinning } from './thinning.js';

let house: TestHouse;
const pit = randomUUID() as PitId;
const [fireEnd, stackEnd, taken] = [randomUUID(), randomUUID(), randomUUID()];
beforeAll(async () => {
  house = await openTestHouse([ReadingsModule]);
  await house.database.query(`insert into pit values ($1, $2, 'Bess', 3, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [pit, house.yardId]);
  for (const [id, name, zone, removed] of [[fireEnd, 'F', 0, false], [stackEnd, 'S', 2, false], [taken, 'Old', 0, true]]) {
    await house.database.query('insert into probe values ($1, $2, $3, $4, $5, $6)', [id, house.yardId, pit, name, zone, removed]);
  }
});
beforeEach(async () => {
  await house.database.query('delete from reading');
  await house.database.query('delete from probe_signal');
});
afterAll(async () => {
  await house.settle();
  await house.close();
});

interface StoredReading { probe_id: string; taken_at: Date; device_taken_at: Date; temp_c: number | null; shown_c: number | null; quality: number; reason: string | null }
const ago = (seconds: number) => toIso(later(house.now, -seconds));
const send = (readings: object[], more: object = {}) =>
  request(house.app.getHttpServer()).post('/api/readings').send({ key: randomUUID(), readings, ...more });
const stored = () => house.database.query('select * from reading order by probe_id, taken_at') as Promise<StoredReading[]>;
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const probes = async (): Promise<ProbesView> => probesView.parse((await request(house.app.getHttpServer()).get('/api/probes').expect(200)).body);
const means = () => house.app.get(Readings).means(house.database.manager, house.yardId, { from: later(house.now, -3600), until: house.now, stretchS: 120 });

it('a batch is kept, and sent again under another key its readings are counted as repeated', async () => {
  const batch = [{ probeId: fireEnd, tempC: 121, takenAt: ago(20) }, { probeId: stackEnd, tempC: 117, takenAt: ago(20) }];
  expect((await send(batch).expect(201)).body).toEqual({ kept: 2, repeated: 0, aside: 0 });
  expect((await send([...batch, { probeId: fireEnd, tempC: 122, takenAt: ago(10) }]).expect(201)).body).toEqual({ kept: 1, repeated: 2, aside: 0 });
  expect(await stored()).toHaveLength(3);
});

it('the first readings of a month, sent by many at once, make its table once and are all kept', async () => {
  for (let round = 0; round < 3; round++) {
    for (const { name } of (await house.database.query(`select inhrelid::regclass::text as name from pg_inherits where inhparent = 'reading'::regclass`)) as { name: string }[]) await house.database.query(`drop table ${name}`);
    const answers = await Promise.all(Array.from({ length: 8 }, (_, nth) => send([{ probeId: fireEnd, tempC: 121, takenAt: ago(20 + nth) }])));
    expect(answers.map(({ status }) => status)).toEqual(Array(8).fill(201));
    expect(await stored()).toHaveLength(8);
  }
});

it('the same key again brings the first answer', async () => {
  const key = randomUUID();
  const batch = [{ probeId: fireEnd, tempC: 121, takenAt: ago(20) }];
  const first = await send(batch, { key }).expect(201);
  const again = await send(batch, { key }).expect(201);
  expect(again.body).toEqual(first.body);
  expect(await stored()).toHaveLength(1);
});

it('one reading three times in a batch is one row', async () => {
  const one = { probeId: fireEnd, tempC: 121, takenAt: ago(20) };
  expect((await send([one, one, one]).expect(201)).body).toEqual({ kept: 1, repeated: 2, aside: 0 });
});

it.each([1500, -300, Number.NaN])('a reading of %d °C is no reading and is refused with its field', async (tempC) => {
  const { body } = await send([{ probeId: fireEnd, tempC, takenAt: ago(5) }]).expect(400);
  expect(body.fields[0].path).toBe('readings.0.tempC');
});

it.each([{}, { tempC: 121, tempF: 250 }, { tempC: 121, source: 'east' }])('a reading that is not exactly one value of exactly one probe is refused: %o', async (more) => {
  await send([{ probeId: fireEnd, takenAt: ago(5), ...more }]).expect(400);
});

it('°F, type K, Pt100 and a thermistor are the same temperature as their tables say', async () => {
  // 250 °F is 121.11 °C. Type K: 3.5582 mV with a cold junction of 35 °C; Pt100: 146.486 ohm; NTC 680 ohm is 99.921 °C (tests/published/reading-sensors.test.ts).
  const of = { a: 0.001129148, b: 0.000234125, c: 8.76741e-8 };
  const values = [{ tempF: 250 }, { typeK: { emfV: 3.5582e-3, coldJunctionTempC: 35 } }, { pt100: { resistanceOhm: 146.486 } }, { ntc: { resistanceOhm: 680, of } }];
  await send(values.map((value, nth) => ({ probeId: fireEnd, takenAt: ago(100 - nth * 10), ...value }))).expect(201);
  const temps = (await stored()).map(({ temp_c }) => temp_c!);
  [121.111, 121.11, 121.11, 99.921].forEach((tempC, nth) => expect(Math.abs(temps[nth]! - tempC)).toBeLessThanOrEqual(0.006));
});

describe('a probe that nobody set up', () => {
  const kept = (source: string) => house.database.query('select why from reading_aside where source = $1', [source]) as Promise<{ why: string }[]>;
  it('is kept aside and offered, while the rest of its batch is kept; given to a probe, all of it is there, from the first on', async () => {
    await house.database.query('delete from reading_aside');
    const batch = [{ probeId: fireEnd, tempC: 121, takenAt: ago(5) }, { source: 'east 3', tempF: 248, takenAt: ago(40) }, { source: 'east 3', tempC: 119, takenAt: ago(30) }];
    expect((await send(batch).expect(201)).body).toEqual({ kept: 1, repeated: 0, aside: 2 });
    expect(await probes()).toMatchObject({ aside: [{ source: 'east 3', readings: 2, lastTempC: 119, deviceId: house.actor!.device.id }] });
    expect((await post('/readings/aside/assign', { source: 'east 3', probeId: stackEnd }).expect(201)).body).toEqual({ kept: 2, repeated: 0, aside: 0 });
    expect((await send([{ source: 'east 3', tempC: 118, takenAt: ago(20) }]).expect(201)).body).toMatchObject({ kept: 1 });
    expect((await stored()).filter(({ probe_id }) => probe_id === stackEnd).map(({ temp_c }) => temp_c)).toEqual([120, 119, 118]);
    expect((await probes()).aside).toEqual([]);
    expect((await post('/readings/aside/assign', { source: 'east 3', probeId: fireEnd }).expect(409)).body.code).toBe('source-taken');
    expect((await post('/readings/aside/assign', { source: 'west', probeId: randomUUID() }).expect(404)).body.code).toBe('probe-unknown');
  });
  it('by an id that is unknown is kept aside too, once however often it is sent', async () => {
    const unknown = randomUUID();
    for (let i = 0; i < 3; i++) await send([{ probeId: unknown, tempC: 121, takenAt: ago(5) }]).expect(201);
    expect(await kept(unknown)).toEqual([{ why: 'probe-unknown' }]);
  });
  it.each([['ancient', -90 * 86_400], ['of the day after tomorrow', 2 * 86_400]])('a time that is %s is kept aside and used for nothing', async (_, offS) => {
    expect((await send([{ probeId: fireEnd, tempC: 121, takenAt: ago(-offS) }]).expect(201)).body).toEqual({ kept: 0, repeated: 0, aside: 1 });
    expect((await probes()).aside).toContainEqual(expect.objectContaining({ source: fireEnd, why: 'time-impossible' }));
    expect((await kept(fireEnd)).map(({ why }) => why)).toContain('time-impossible');
  });
});

describe('quality', () => {
  /** Ten-second readings from `fromS` seconds ago on, the last ones before now. */
  const series = (fromS: number, untilS: number, tempAt: (s: number) => number | 'open') =>
    Array.from({ length: Math.floor((fromS - untilS) / 10) }, (_, nth) => {
      const value = tempAt(nth * 10);
      return { probeId: fireEnd, takenAt: ago(fromS - nth * 10), ...(value === 'open' ? { fault: 'open' } : { tempC: Math.round(value * 10) / 10 }) };
    });
  const marked = async () => (await stored()).filter(({ quality }) => quality > 0).map(({ taken_at, quality, reason }) => `${(taken_at.getTime() - house.now * 1000) / 1000} ${quality} ${reason}`);
  const breathing = (s: number) => 121 + 2 * Math.sin(s / 170) + 0.3 * Math.sin(s * 7.3);

  it('a stuck probe is suspect within 10 minutes and bad within 20, and its readings are in no mean any more', async () => {
    const all = series(2700, 0, (s) => (s < 900 ? breathing(s) : 121.3));
    for (let nth = 0; nth < all.length; nth += 6) await send(all.slice(nth, nth + 6)).expect(201);
    const found = await marked();
    expect(found[0]).toMatch(/^-1(1[0-9]{2}|200|2[01]0) 1 stuck$/);
    expect(found.find((one) => one.endsWith('2 stuck'))).toMatch(/^-(5[0-9]{2}|6[01]0) 2 stuck$/);
    expect((await means()).get(pit)?.filter(({ until }) => until > later(house.now, -480))).toEqual([]);
    expect((await probes()).probes.find(({ id }) => id === fireEnd)).toMatchObject({ quality: 'bad', reason: 'stuck' });
  });

  it('an open wire is a gap from its first reading on, never a temperature', async () => {
    await send(series(600, 0, (s) => (s >= 300 ? 'open' : breathing(s)))).expect(201);
    expect((await marked())[0]).toBe('-300 2 open');
    expect((await stored()).filter(({ reason }) => reason === 'open').every(({ temp_c }) => temp_c === null)).toBe(true);
  });

  it('three times, shuffled and in pieces, a night is the same to the last digit as in order', async () => {
    const all = series(5400, 0, (s) => (s % 1300 === 0 ? 165 : s > 4000 && s < 4100 ? 'open' : breathing(s)));
    const fresh = async () => {
      await house.database.query('delete from reading');
      await house.database.query('delete from probe_signal');
    };
    await fresh();
    await send(all).expect(201);
    const [inOrder, meansInOrder, marksInOrder] = [await stored(), await means(), await marked()];
    await fresh();
    const random = randomStream(7);
    const shuffled = [...all, ...all, ...all].map((one) => ({ one, at: random.next() })).sort((a, b) => a.at - b.at).map(({ one }) => one);
    for (let nth = 0; nth < shuffled.length; nth += 90) await send(shuffled.slice(nth, nth + 90)).expect(201);
    expect((await stored()).map(({ taken_at, temp_c }) => [taken_at, temp_c])).toEqual(inOrder.map(({ taken_at, temp_c }) => [taken_at, temp_c]));
    expect(await marked()).toEqual(marksInOrder);
    expect(await means()).toEqual(meansInOrder);
    expect(marksInOrder.filter((one) => one.endsWith('spike')).length).toBeGreaterThan(2);
  });
});

it('a probe held against ice reads corrected from then on, and the record says by whom', async () => {
  await post(`/probes/${stackEnd}/calibrate`, { against: [{ shownC: 1.5, trueC: 0 }], note: 'ice bath' }).expect(201);
  await send([{ probeId: stackEnd, tempC: 119, takenAt: ago(600) }, { probeId: stackEnd, tempC: 119, takenAt: ago(0) }]).expect(201);
  expect((await stored()).map(({ temp_c, shown_c }) => [shown_c, temp_c])).toEqual([[119, 119], [119, 117.5]]);
  expect((await probes()).probes.find(({ id }) => id === stackEnd)?.calibration).toMatchObject({ by: house.actor!.person!.id, note: 'ice bath', against: [{ shownC: 1.5, trueC: 0 }] });
  await post(`/probes/${randomUUID()}/calibrate`, { against: [] }).expect(404);
  await house.database.query('delete from probe_calibration');
});

describe('a pasted table', () => {
  const paste = (text: string) => post('/readings/pasted', { text });
  it('with semicolons and decimal commas is taken in; lines that are no reading are named', async () => {
    const text = `Time;Probe;Temp_C\n${ago(30)};${fireEnd};121,5\n${ago(20)};${fireEnd};warm\n\n${ago(10).replace('T', ' ').replace('Z', '')};${fireEnd};122.5\n`;
    const { body } = await paste(text).expect(201);
    expect(body).toMatchObject({ kept: 2, repeated: 0, aside: 0 });
    expect(body.wrong).toHaveLength(1);
    expect(body.wrong[0]).toMatchObject({ line: 3, wants: expect.stringMatching(/tempC/) });
    expect((await stored()).map(({ temp_c }) => temp_c)).toEqual([121.5, 122.5]);
  });
  it.each(['hello', 'probe,time\nx,y', '"unclosed'])('what is no table is refused: %s', async (text) => {
    expect((await paste(text).expect(409)).body.code).toBe('not-a-table');
  });
});

describe('what stays', () => {
  it('means of two minutes, with late readings, and of months gone by nothing else', async () => {
    await send([{ probeId: fireEnd, tempC: 120, takenAt: ago(100) }, { probeId: fireEnd, tempC: 124, takenAt: ago(10) }]).expect(201);
    const thinning = house.app.get(Thinning);
    await thinning.thin(house.now);
    await send([{ probeId: fireEnd, tempC: 122, takenAt: ago(50) }]).expect(201);
    await thinning.thin(later(house.now, 60));
    const thin = (await house.database.query('select mean_c, least_c, most_c, samples from reading_thin where probe_id = $1', [fireEnd])) as object[];
    expect(thin).toEqual([{ mean_c: 122, least_c: 120, most_c: 124, samples: 3 }]);
    const fullTrees = () => house.database.query(`select relname from pg_class where relname like 'reading_2%' and relkind = 'i' and 'fillfactor=100' = any(reloptions)`);
    expect(await fullTrees()).toEqual([]);
    const month = new Date(house.now * 1000);
    await thinning.thin(epochS(Date.UTC(month.getUTCFullYear(), month.getUTCMonth() + 1, 3, 1) / 1000));
    expect(await fullTrees()).toHaveLength(2);
    expect(await stored()).toHaveLength(3);
    await thinning.thin(later(house.now, 90 * 86_400));
    expect(await stored()).toHaveLength(0);
    expect(await house.database.query('select 1 from reading_thin')).toHaveLength(1);
    const { body } = await request(house.app.getHttpServer()).get('/api/probes/courses').query({ from: ago(3600) }).expect(200);
    expect(probeCourses.parse(body)).toMatchObject({ stretchS: 120, courses: [{ probeId: fireEnd, meanC: [122], leastC: [120], mostC: [124] }] });
  });
});

it('the means stand per zone and two minutes; a removed probe and a reading of the future are kept and left out', async () => {
  await send([
    { probeId: fireEnd, tempC: 120, takenAt: ago(100) },
    { probeId: fireEnd, tempC: 124, takenAt: ago(10) },
    { probeId: fireEnd, tempC: 90, takenAt: ago(130) },
    { probeId: stackEnd, tempC: 118, takenAt: ago(0) },
    { probeId: taken, tempC: 300, takenAt: ago(10) },
    { probeId: fireEnd, tempC: 300, takenAt: ago(-600) },
  ]).expect(201);
  expect(await stored()).toHaveLength(6);
  expect((await means()).get(pit)).toEqual([
    { pitId: pit, zone: 0, until: later(house.now, -120), tempC: 90 },
    { pitId: pit, zone: 0, until: house.now, tempC: 122 },
    { pitId: pit, zone: 2, until: house.now, tempC: 118 },
  ]);
  house.now = later(house.now, 900);
  expect((await means()).get(pit)?.some(({ tempC }) => tempC === 300)).toBe(false);
});

it('a gateway whose clock is 45 minutes fast is corrected, and both times are kept', async () => {
  const fast = (seconds: number) => toIso(later(house.now, 45 * 60 - seconds));
  await send([{ probeId: fireEnd, tempC: 121, takenAt: fast(30) }], { sentAt: fast(0) }).expect(201);
  const [row] = await stored();
  expect(row?.taken_at.getTime()).toBe((house.now - 30) * 1000);
  expect(row?.device_taken_at.getTime()).toBe((house.now - 30 + 45 * 60) * 1000);
  expect((await send([{ probeId: fireEnd, tempC: 121, takenAt: fast(30) }], { sentAt: fast(-9) }).expect(201)).body).toEqual({ kept: 0, repeated: 1, aside: 0 });
});

describe('a temperature that runs away', () => {
  const told = async () =>
    ((await house.database.query(`select event from outbox where event->>'kind' = 'readings-recorded' order by seq desc limit 1`)) as [{ event: { runningAway?: string[] } }])[0].event.runningAway;
  /** One reading every ten seconds, as a gateway sends them; the last of them now. */
  const climb = async (seconds: number, kPerMin: number, probeId = fireEnd) => {
    for (let ago = seconds; ago >= 0; ago -= 10) {
      house.now = later(house.now, 10);
      await send([{ probeId, tempC: 121 + (kPerMin * (seconds - ago)) / 60, takenAt: toIso(house.now) }]).expect(201);
    }
  };
  beforeEach(() => {
    house.now = later(house.now, 900);
  });

  it('is told with its pit, from raw readings across batches, within the minute', async () => {
    await climb(70, 22);
    expect(await told()).toEqual([pit]);
  });

  it('a fire just fed does not run away: 10 °F a minute is as fast as one climbs', async () => {
    await climb(150, 10 / 1.8);
    expect(await told()).toBeUndefined();
  });

  it('one leap of a failing probe is no fire', async () => {
    await climb(60, 0);
    house.now = later(house.now, 10);
    await send([{ probeId: fireEnd, tempC: 232, takenAt: toIso(house.now) }]).expect(201);
    expect(await told()).toBeUndefined();
  });

  it('a probe that was taken away is not listened to', async () => {
    await climb(70, 22, taken);
    expect(await told()).toBeUndefined();
  });
});

it('readings of the future are handed out as such, to be shown', async () => {
  house.now = later(house.now, 3600);
  await send([{ probeId: stackEnd, tempC: 118, takenAt: ago(0) }, { probeId: stackEnd, tempC: 118, takenAt: ago(-600) }]).expect(201);
  const early = await house.app.get(Readings).fromTheFuture(house.database.manager, pit, { from: later(house.now, -60), until: later(house.now, 60) });
  expect(early).toEqual([{ at: house.now, zone: 2 }]);
});
