import type { ServiceCost, ServiceCosts } from '@stokehold/domain/contract';
import { type CookId, type EpochS, fromIso, HOUR_S, later, type LotId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csvOf } from '../../../board/src/parts/save-file.js';
import { pdfOf } from '../../../board/src/parts/paper-pdf.js';
import { costPaper } from '../../../board/src/screens/service/cost-paper.js';
import { costRows } from '../../../board/src/screens/service/parts-of-cost.js';
import { weekRows, weekSums } from '../../../board/src/screens/service/week-sums.js';
import { figuresOf } from '../../../board/src/units/figures.js';
import '../../../board/src/words/service.js';
import { sayIn } from '../../../board/src/words/words.js';
import { Services } from './index.js';
import { LOT_PIECES, lotPriceCents, openTwoDays, type TwoDays } from './testing.js';

// Every cent of two days, from the rows of the ledger to the papers, against exact rational arithmetic that is written out here: fractions
// of two whole numbers, and the largest remainder (Hamilton's method of apportionment, from memory) for whole cents. Nothing of the
// house's own reckoning is used on this side.

interface Fraction { readonly top: bigint; readonly bottom: bigint }
const NONE: Fraction = { top: 0n, bottom: 1n };
const plus = (a: Fraction, b: Fraction): Fraction => ({ top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom });
const isEqual = (a: Fraction, b: Fraction) => a.top * b.bottom === b.top * a.bottom;
/** Half a cent and more is a cent. */
const rounded = (top: bigint, bottom: bigint) => (2n * top + bottom) / (2n * bottom);

/** Whole cents by parts, the cents left over to the largest remainders; ties to the earlier name. */
function apportioned(amount: bigint, parts: ReadonlyMap<string, Fraction>): ReadonlyMap<string, bigint> {
  const names = [...parts.keys()].sort();
  const product = names.reduce((all, name) => all * parts.get(name)!.bottom, 1n);
  const whole = names.map((name) => parts.get(name)!.top * (product / parts.get(name)!.bottom));
  const sum = whole.reduce((all, one) => all + one, 0n);
  const quotas = whole.map((one, i) => ({ i, floor: (amount * one) / sum, rest: (amount * one) % sum }));
  const left = Number(amount - quotas.reduce((all, { floor }) => all + floor, 0n));
  const more = new Set([...quotas].sort((a, b) => (a.rest > b.rest ? -1 : a.rest < b.rest ? 1 : a.i - b.i)).slice(0, left).map(({ i }) => i));
  return new Map(names.map((name, i) => [name, quotas[i]!.floor + (more.has(i) ? 1n : 0n)]));
}

interface Lay { readonly cook: CookId; readonly pit: PitId; readonly grams: bigint; readonly from: EpochS; readonly until: EpochS }
interface Entry { readonly lot: LotId; readonly pit: PitId; readonly kind: string; readonly gone: number; readonly at: EpochS }
interface Ledger { readonly lays: readonly Lay[]; readonly entries: readonly Entry[]; readonly services: ReadonlyMap<CookId, string> }

const RATE_CENTS = 1733;
const MEAT_CENTS = [4_111, 0, 2_907, 7_777, 1, 12_345, 998, 3_333];
const SHIFT_H = 15;
const rules = { paidBreakUpToS: 0, nightFrom: '22:00', nightUntil: '06:00', nightExtraPermille: 0, overtimeAfterS: 86_400, overtimeExtraPermille: 0 };

let days: TwoDays;
let began: EpochS;
let ledger: Ledger;
let sheets: readonly ServiceCost[];
let weeks: ServiceCosts;

async function readLedger(): Promise<Ledger> {
  const lays = (await days.house.database.query(
    `select cook_id as cook, pit_id as pit, round((placement.pieces * weight_kg * 1000 / cook.pieces)::numeric)::text as grams, extract(epoch from from_at)::float8 as from, coalesce(extract(epoch from until_at)::float8, $1) as until
     from placement join cook on cook.id = cook_id`, [days.house.now],
  )) as (Omit<Lay, 'grams'> & { grams: string })[];
  const cooks = (await days.house.database.query('select id, service_id from cook')) as { id: CookId; service_id: string }[];
  return {
    lays: lays.map((lay) => ({ ...lay, grams: BigInt(lay.grams) })), services: new Map(cooks.map(({ id, service_id }) => [id, service_id])),
    entries: await days.house.database.query(`select lot_id as lot, pit_id as pit, kind, -(stack_pieces + cart_pieces) as gone, extract(epoch from moved_at)::float8 as at from wood_move`),
  };
}

beforeAll(async () => {
  days = await openTwoDays(23, async ({ house, cooks, post }) => {
    began = house.now;
    const person = house.actor!.person!.id;
    await house.database.query('update crew_member set rate_cents_per_hour = $1 where id = $2', [RATE_CENTS, person]);
    await post('/pay-rules', { rules }).expect(201);
    for (const nth of [0, 1]) {
      const hours = { startsAt: toIso(later(began, nth * 24 * HOUR_S + 777)), endsAt: toIso(later(began, (nth * 24 + SHIFT_H) * HOUR_S)) };
      await post('/shifts', { id: randomUUID(), ...hours, people: [{ personId: person, ...hours, breaks: [] }], pits: [] }).expect(201);
    }
    for (const [nth, id] of cooks.entries()) await post(`/cooks/${id}/price`, { meatCents: MEAT_CENTS[nth] }).expect(201);
  });
  ledger = await readLedger();
  const services = days.house.app.get(Services);
  sheets = await Promise.all(days.services.map((id) => services.cost(days.house, id)));
  weeks = await services.costs(days.house, began);
});
afterAll(() => days.house.close());

const spanOf = ({ service }: ServiceCost) => ({ from: later(fromIso(service.readyBy), -20 * HOUR_S), until: Math.min(fromIso(service.readyBy), days.house.now) as EpochS });
/** What lay on the pits in a stretch, cut to it. */
const laysIn = ({ from, until }: { from: EpochS; until: EpochS }): readonly Lay[] =>
  ledger.lays.filter((lay) => lay.from < until && lay.until > from).map((lay) => ({ ...lay, from: Math.max(lay.from, from) as EpochS, until: Math.min(lay.until, until) as EpochS }));

/** Who carries a split: what lies there; else what this pit cooks next; else what it cooked last. */
function carriers(own: readonly Lay[], at: EpochS): readonly Lay[] {
  const there = own.filter(({ from, until }) => from <= at && at < until);
  const next = Math.min(...own.filter(({ from }) => from > at).map(({ from }) => from));
  const last = Math.max(...own.map(({ until }) => until));
  return there.length > 0 ? there : next < Infinity ? own.filter(({ from }) => from === next) : own.filter(({ until }) => until === last);
}

/** Of one lot in a stretch: its splits by who carried them, as fractions of splits, by pit too, and what they cost. */
function lotIn(lot: LotId, nth: number, span: { from: EpochS; until: EpochS }) {
  const own = ledger.entries.filter((one) => one.lot === lot);
  const burned = own.filter(({ kind, at }) => kind === 'burned' && at >= span.from && at <= span.until);
  const count = (all: readonly Entry[]) => all.reduce((sum, { gone }) => sum + BigInt(gone), 0n);
  const [before, during] = [count(own.filter(({ kind, at }) => kind === 'burned' && at < span.from)), count(burned)];
  const lost = count(own.filter(({ kind }) => kind === 'recounted' || kind === 'trimmed'));
  const useful = [1n, before + during, BigInt(LOT_PIECES) - lost].reduce((most, one) => (one > most ? one : most));
  const price = BigInt(lotPriceCents(nth));
  const byCook = new Map<string, Fraction>();
  const byPit = new Map<string, Fraction>();
  for (const { pit, gone, at } of burned) {
    const takers = carriers(laysIn(span).filter((lay) => lay.pit === pit), at);
    const all = takers.reduce((sum, { grams }) => sum + grams, 0n);
    const list = takers.length > 0 ? takers.map(({ cook, grams }) => [cook as string, { top: BigInt(gone) * grams, bottom: all }] as const) : [['', { top: BigInt(gone), bottom: 1n }] as const];
    for (const [cook, part] of list) {
      byCook.set(cook, plus(byCook.get(cook) ?? NONE, part));
      byPit.set(pit, plus(byPit.get(pit) ?? NONE, part));
    }
  }
  const costCents = rounded(price * (before + during), useful) - rounded(price * before, useful);
  return { during, byPit, burned, costCents, cents: during > 0n ? apportioned(costCents, byCook) : new Map<string, bigint>() };
}
const ofService = (cost: ServiceCost, cents: ReadonlyMap<string, bigint>) => [...cents].filter(([cook]) => ledger.services.get(cook as CookId) === cost.service.id).reduce((sum, [, one]) => sum + one, 0n);
const total = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0);
const centsOf = (money: string) => Number(money.replace(/[^0-9-]/g, ''));

describe.each([0, 1, 2, 3])('meal %d, from the ledger to the paper', (nth) => {
  const sheet = () => sheets[nth]!;
  const lots = () => days.lots.map((lot, n) => ({ name: `Lot ${n}`, ...lotIn(lot, n, spanOf(sheet())) }));

  it('by pit: the parts of the cooks are the splits that burned there, as exact fractions', () => {
    for (const { byPit, burned, during } of lots()) {
      for (const [pit, part] of byPit) expect(isEqual(part, { top: burned.filter((one) => one.pit === pit).reduce((sum, { gone }) => sum + BigInt(gone), 0n), bottom: 1n })).toBe(true);
      expect(isEqual([...byPit.values()].reduce(plus, NONE), { top: during, bottom: 1n })).toBe(true);
    }
  });
  it('by lot: each costs this meal what the fractions say, and all of it goes to somebody or is left open', () => {
    for (const { name, cents, costCents } of lots()) {
      expect([...cents.values()].reduce((sum, one) => sum + one, 0n)).toBe(cents.size > 0 ? costCents : 0n);
      expect(BigInt(sheet().wood.find(({ lot }) => lot === name)?.costCents ?? 0)).toBe(ofService(sheet(), cents));
    }
  });
  it('by person: hours by the rate, shared by weight and time on the pits', () => {
    const span = spanOf(sheet());
    const paidS = [0, 1].reduce((sum, night) => sum + Math.max(0, Math.min(later(began, (night * 24 + SHIFT_H) * HOUR_S), span.until) - Math.max(later(began, night * 24 * HOUR_S + 777), span.from)), 0);
    const parts = new Map<string, Fraction>();
    for (const { cook, grams, from, until } of laysIn(span)) parts.set(cook, plus(parts.get(cook) ?? NONE, { top: grams * BigInt(until - from), bottom: 1n }));
    expect(paidS).toBeGreaterThan(0);
    expect(BigInt(sheet().crewCents)).toBe(ofService(sheet(), apportioned(rounded(BigInt(RATE_CENTS) * BigInt(paidS), 3600n), parts)));
  });
  it('by cook: wood of every lot, hours and meat, and the meal is the sum of its cooks', () => {
    const all = lots();
    for (const { cook, woodCents, meatCents, crewCents, totalCents } of sheet().cooks) {
      expect(BigInt(woodCents)).toBe(all.reduce((sum, { cents }) => sum + (cents.get(cook.id) ?? 0n), 0n));
      expect(meatCents).toBe(MEAT_CENTS[days.cooks.indexOf(cook.id as CookId)]);
      expect(totalCents).toBe(woodCents + crewCents + meatCents);
    }
    const { woodCents, crewCents, meatCents, totalCents, cooks, wood, crew } = sheet();
    expect([total(wood.map(({ costCents }) => costCents)), total(crew.map(({ costCents }) => costCents))]).toEqual([woodCents, crewCents]);
    expect([total(cooks.map((one) => one.woodCents)), total(cooks.map((one) => one.crewCents)), total(cooks.map((one) => one.meatCents)), total(cooks.map((one) => one.totalCents))]).toEqual([woodCents, crewCents, meatCents, totalCents]);
  });
  it('the CSV adds up by itself: wood, crew and meat line by line, the cooks, and the sums', () => {
    const rows = csvOf(costRows(sheet())).trim().split('\r\n').map((row) => row.split(','));
    const of = (kind: string, name?: string) => total(rows.filter((row) => row[1] === kind && (name === undefined || row[2] === name)).map((row) => centsOf(row[5]!)));
    expect([of('wood'), of('crew'), of('meat')]).toEqual([of('sum', 'wood'), of('sum', 'crew'), of('sum', 'meat')]);
    expect([of('cook'), of('wood') + of('crew') + of('meat')]).toEqual([sheet().totalCents, of('sum', 'in all')]);
  });
  it.each(['en', 'es'] as const)('the PDF, in %s, says the same cents in every table and in its sums', (language) => {
    const paper = costPaper(sheet(), sayIn(language, 'service'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language }));
    const [cooks, lotTable, people] = paper.tables;
    const column = (table: typeof cooks, at: number) => total(table!.rows.map((row) => centsOf(row[at]!)));
    expect([1, 2, 3, 4].map((at) => column(cooks, at))).toEqual([sheet().woodCents, sheet().crewCents, sheet().meatCents, sheet().totalCents]);
    expect([column(lotTable, 3), column(people, 2)]).toEqual([sheet().woodCents, sheet().crewCents]);
    const written = new TextDecoder('latin1').decode(pdfOf(paper).output('arraybuffer'));
    for (const line of paper.lines.slice(2)) expect(written).toContain(`(${line.replaceAll('\u202f', ' ')}) Tj`);
    for (const row of cooks!.rows) expect(written).toContain(`(${row[4]}) Tj`);
  });
});

it('the weeks, their table and their CSV are the sums of the meals', () => {
  expect(weeks.map(({ id, woodCents, crewCents, meatCents, totalCents }) => ({ id, woodCents, crewCents, meatCents, totalCents })))
    .toEqual(sheets.map(({ service: { id }, woodCents, crewCents, meatCents, totalCents }) => ({ id, woodCents, crewCents, meatCents, totalCents })));
  const all = total(sheets.map(({ totalCents }) => totalCents));
  expect(all).toBeGreaterThan(10_000);
  expect(total(weekSums(weeks).map(({ totalCents }) => totalCents))).toBe(all);
  const rows = csvOf(weekRows(weeks)).trim().split('\r\n').slice(1).map((row) => row.split(','));
  expect(total(rows.map((row) => centsOf(row[7]!)))).toBe(all);
  expect(total(rows.flatMap((row) => [row[4]!, row[5]!, row[6]!].map(centsOf)))).toBe(all);
});
