import { epochS, type LotId, type PitId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { leastCost } from './simplex.js';
import { checkPull, generatedYard, planPull, type PullHour, type PullPlan, type PullProblem, type PullBefore, repullReasons, repullWood, validatePull, wishesOf } from './index.js';

const options = { seed: 1, stop: afterIterations(8000) };
const from = epochS(1_800_000_000);
const hour = (h: number, more: Partial<PullHour> = {}): PullHour => ({ from: epochS(from + h * 3600), until: epochS(from + (h + 1) * 3600), needJ: 40e6, spreadJ: 0, across: true, offcuts: false, mix: [], ...more });
const worthRepull = (problem: PullProblem, before: PullBefore) => repullReasons(problem, before)[0];
const pitId = (n: number) => `pit-${n}` as PitId;
const lotId = (name: string) => name as LotId;

/** Two pits, each six hours of 40 MJ: 240 MJ, twelve splits of 20 MJ; all of it in one stack 60 s away. */
function hand(more: Partial<PullProblem> = {}): PullProblem {
  const lots = [lotId('dry'), lotId('wet')];
  return {
    from, places: ['stack', 'a', 'b'], walkS: [[0, 60, 60], [60, 0, 30], [60, 30, 0]], promises: [],
    lots: lots.map((id) => ({ id, species: 'oak', pieceKg: 2, priceMills: 1000, wetPoints: id === 'wet' ? 60 : 0, laterMills: 0 })),
    piles: [{ id: 'dry', lotId: lots[0]!, place: 'stack', pieces: 40 }, { id: 'wet', lotId: lots[1]!, place: 'stack', pieces: 40 }],
    pits: [1, 2].map((n) => ({ id: pitId(n), place: n === 1 ? 'a' : 'b', cartKg: 40, hours: Array.from({ length: 6 }, (_, h) => hour(h)) })),
    ways: [1, 2].flatMap((n) => lots.map((id) => ({ pitId: pitId(n), lotId: id, asIs: { heatJ: 20e6, lies: 'across' as const } }))),
    ...more,
  };
}
const burned = (plan: PullPlan, pit: PitId, lot?: string) => plan.loads.filter((load) => load.pitId === pit).flatMap(({ wood }) => wood).filter((wood) => !lot || wood.lotId === lot).reduce((sum, { pieces }) => sum + pieces, 0);

describe('the pull', () => {
  it('gives each pit its twelve dry splits, proves it best, and passes the checker', () => {
    const plan = planPull(hand(), options);
    expect([burned(plan, pitId(1), 'dry'), burned(plan, pitId(2), 'dry'), burned(plan, pitId(1), 'wet')]).toEqual([12, 12, 0]);
    expect(plan.gapFrac).toBeLessThan(0.001);
    expect(checkPull(hand(), plan)).toEqual([]);
  });
  it('a haul of twelve splits: one way of 60 s there and back and 8 s a split, there when the hours begin', () => {
    const [haul] = planPull(hand({ from: epochS(from - 7200) }), options).hauls;
    expect(haul).toMatchObject({ pieces: 12, lengthS: 120 + 96, latestAt: from - 216, dueAt: from - 216 - 1800, fromPlaces: ['stack'] });
  });
  it('wood on the pit\'s own cart is burned first; the haul waits until a fire that runs high has used it up', () => {
    const pits = hand().pits.map((pit) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, spreadJ: 10e6 })) }));
    const problem = hand({ pits, parameters: { reserveDeviations: 1 }, piles: [...hand().piles, { id: 'cart-1', lotId: lotId('dry'), place: 'a', cartOf: pitId(1), pieces: 5 }] });
    const plan = planPull(problem, options);
    expect(plan.loads[0]!.wood.find(({ pileId }) => pileId === 'cart-1')!.pieces).toBe(5);
    const haul = plan.hauls.find(({ pitId: id }) => id === pitId(1))!;
    expect(haul.latestAt + haul.lengthS).toBe(from + 2 * 3600); // by hand: 100 MJ at 50 an hour
    expect(checkPull(problem, plan)).toEqual([]);
    expect(checkPull(problem, { ...plan, hauls: plan.hauls.map((one) => (one === haul ? { ...one, latestAt: epochS(one.latestAt + 600) } : one)) }).map(({ code }) => code)).toContain('haul-wrong');
  });
  it('when dry wood is short the wet is shared: no pit is left with the wet lot', () => {
    const problem = hand({ piles: [{ id: 'dry', lotId: lotId('dry'), place: 'stack', pieces: 12 }, { id: 'wet', lotId: lotId('wet'), place: 'stack', pieces: 40 }] });
    const plan = planPull(problem, options);
    expect([burned(plan, pitId(1), 'wet'), burned(plan, pitId(2), 'wet')]).toEqual([6, 6]);
    expect(plan.worth.worstWetPoints).toBe(30); // by hand: half of 60
  });
  it('food at the fire end: wood that lies lengthwise is trimmed, at the stack end alone it is burned as it is', () => {
    const ways = [1, 2].map((n) => ({ pitId: pitId(n), lotId: lotId('dry'), asIs: { heatJ: 20e6, lies: 'lengthwise' as const }, trimmed: { heatJ: 16e6, trimMills: 100, cuts: 1, offcuts: 1 } }));
    const pits = hand().pits.map((pit, i) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, across: i === 0 })) }));
    const problem = hand({ ways, pits });
    const plan = planPull(problem, options);
    expect(checkPull(problem, plan)).toEqual([]);
    expect([burned(plan, pitId(1)), burned(plan, pitId(2))]).toEqual([15, 12]); // by hand: 240 / 16 and 240 / 20
    expect(plan.loads[0]!.wood[0]).toMatchObject({ way: 'trimmed', cuts: 15, offcuts: 15 });
  });
  it('the kitchen\'s mix: half of the heat from hickory, or it is said how far off it is', () => {
    const lots = [...hand().lots, { id: lotId('hickory'), species: 'hickory', pieceKg: 2, priceMills: 3000, wetPoints: 0, laterMills: 0 }];
    const mix = [{ species: ['hickory'], leastFrac: 0.5, mostFrac: 1 }];
    const problem = hand({
      lots, pits: hand().pits.map((pit, i) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, mix: i === 0 ? mix : [] })) })), parameters: { mixMillsPerMj: 1000 },
      piles: [...hand().piles, { id: 'hickory', lotId: lotId('hickory'), place: 'stack', pieces: 4 }],
      ways: [...hand().ways, ...[1, 2].map((n) => ({ pitId: pitId(n), lotId: lotId('hickory'), asIs: { heatJ: 20e6, lies: 'across' as const } }))],
    });
    const plan = planPull(problem, options);
    expect([burned(plan, pitId(1), 'hickory'), burned(plan, pitId(2), 'hickory')]).toEqual([4, 0]);
    expect(plan.worth.mixOffJ).toBe(40e6); // by hand: 120 wanted, 80 there
    expect(checkPull(problem, plan)).toEqual([]);
  });
  it('offcuts burn at lighting and after the wrap, and no other time', () => {
    const lots = [...hand().lots, { id: lotId('offcut'), species: 'oak', pieceKg: 0.7, priceMills: 0, wetPoints: 0, laterMills: 0, offcut: true }];
    const problem = hand({
      lots, piles: [...hand().piles, { id: 'offcut', lotId: lotId('offcut'), place: 'stack', pieces: 90 }],
      ways: [...hand().ways, { pitId: pitId(1), lotId: lotId('offcut'), asIs: { heatJ: 8e6, lies: 'across' } }],
      pits: hand().pits.map((pit) => ({ ...pit, hours: pit.hours.map((one, h) => ({ ...one, offcuts: h === 0 })) })),
    });
    const plan = planPull(problem, options);
    expect([burned(plan, pitId(1), 'offcut'), burned(plan, pitId(1), 'dry')]).toEqual([5, 10]); // by hand: 40 MJ of 8 each
    expect(plan.hauls.map(({ pieces }) => pieces)).toEqual([10, 12]); // offcuts are taken along by whoever lights
    expect(checkPull(problem, plan)).toEqual([]);
  });
  it('offcuts that were told count while they lie there and their hours last; burned, they are no stock that is gone', () => {
    const lots = [...hand().lots, { id: lotId('offcut'), species: 'oak', pieceKg: 0.7, priceMills: 0, wetPoints: 0, laterMills: 0, offcut: true }];
    const night = (first: number, pieces: number) => hand({
      from: epochS(from + first * 3600), lots, piles: [{ id: 'cart', lotId: lotId('dry'), place: 'a', cartOf: pitId(1), pieces: 10 }, { id: 'offcut', lotId: lotId('offcut'), place: 'stack', pieces }],
      ways: [...hand().ways, { pitId: pitId(1), lotId: lotId('offcut'), asIs: { heatJ: 8e6, lies: 'across' } }],
      pits: hand().pits.slice(0, 1).map((pit) => ({ ...pit, hours: pit.hours.slice(first).map((one, h) => ({ ...one, offcuts: first + h === 0 })) })),
    });
    const load = { pitId: pitId(1), from, until: epochS(from + 6 * 3600), heatJ: 240e6, shortJ: 0, reserveShortJ: 0, mixOffJ: 0 };
    const told = { toHaul: [{ ...load, wood: [{ pileId: 'offcut', lotId: lotId('offcut'), isOffcut: true, pieces: 5, way: 'as-is' as const, cuts: 0, offcuts: 0 }] }], needJ: new Map([[pitId(1), 240e6]]), missingJ: new Map(), wishes: new Map() };
    expect(worthRepull(night(0, 5), told)).toBeUndefined(); // by hand: 10 x 20 and 5 x 8 MJ are the 240 that it wants
    expect(worthRepull(night(0, 4), told)).toEqual({ because: 'runs-short', where: pitId(1) });
    expect(worthRepull(night(1, 0), told)).toBeUndefined(); // an hour on they are burned, and 200 MJ lie there for 200
  });
  it('a pit whose need does not go on one cart gets it in two, the second hauled before the first is gone', () => {
    const problem = hand({ pits: [{ ...hand().pits[0]!, cartKg: 16 }, hand().pits[1]!] });
    const plan = planPull(problem, options);
    expect(plan.loads.filter(({ pitId: id }) => id === pitId(1)).map(({ from: f, until }) => [(f - from) / 3600, (until - from) / 3600])).toEqual([[0, 3], [3, 6]]);
    expect(plan.hauls.filter(({ pitId: id }) => id === pitId(1)).at(-1)!.latestAt).toBeLessThan(from + 3 * 3600);
  });
  it('too little wood is owned up to', () => {
    const plan = planPull(hand({ piles: [{ id: 'dry', lotId: lotId('dry'), place: 'stack', pieces: 20 }] }), options);
    expect(plan.worth.shortJ).toBe(80e6); // by hand: four splits of 20 MJ
  });
  it('the same problem, seed and iterations give the same plan; more time never a worse one', () => {
    const problem = generatedYard({ pits: 5, lots: 12, seed: 3 });
    expect(planPull(problem, options)).toEqual(planPull(problem, options));
    expect(planPull(problem, { seed: 1, stop: afterIterations(20_000) }).worth.totalMills).toBeLessThanOrEqual(planPull(problem, { seed: 1, stop: afterIterations(0) }).worth.totalMills);
  });
  it.each([1, 2, 3, 4])('drawn nights of twelve pits and forty lots, half of them with offcuts, pass the checker; seed %d', (seed) => {
    const problem = generatedYard({ pits: 12, lots: 40, seed, plenty: seed % 2 ? 2 : 1.1, offcuts: seed > 2 });
    expect(validatePull(problem).ok).toBe(true);
    const plan = planPull(problem, options);
    expect(checkPull(problem, plan)).toEqual([]);
    expect(plan.worth.shortJ).toBe(0);
  });
});

describe('the checker', () => {
  const problem = generatedYard({ pits: 3, lots: 8, seed: 2 });
  const plan = planPull(problem, options);
  const bend = (more: (load: PullPlan['loads'][number]) => object, i = 0): PullPlan => ({ ...plan, loads: plan.loads.map((load, at) => (at === i ? { ...load, ...more(load) } : load)) });
  const wood = (more: object) => bend(({ wood: [first, ...rest] }) => ({ wood: [{ ...first!, ...more }, ...rest] }));
  it('has nothing against the planner', () => {
    expect(checkPull(problem, plan)).toEqual([]);
  });
  it.each([
    { what: 'a pile that is not there', bent: () => wood({ pileId: 'nowhere' }), code: 'unknown-pile' },
    { what: 'another lot\'s name', bent: () => wood({ lotId: 'lot-x' }), code: 'wrong-lot' },
    { what: 'half a split', bent: () => wood({ pieces: 1.5 }), code: 'not-whole' },
    { what: 'more than lies there', bent: () => wood({ pieces: 5000 }), code: 'more-than-there-is' },
    { what: 'an overloaded cart', bent: () => wood({ pieces: 60 }), code: 'cart-overloaded' },
    { what: 'splits that call themselves offcuts', bent: () => wood({ isOffcut: true }), code: 'wrong-figure' },
    { what: 'heat that is not there', bent: () => bend(({ heatJ }) => ({ heatJ: heatJ + 5e6 })), code: 'wrong-figure' },
    { what: 'a shortage that is hidden', bent: () => bend(() => ({ wood: [] })), code: 'wrong-figure' },
    { what: 'hours left out', bent: () => ({ ...plan, loads: plan.loads.slice(1) }), code: 'hours-not-covered' },
    { what: 'a forgotten haul', bent: () => ({ ...plan, hauls: plan.hauls.slice(1) }), code: 'haul-missing' },
    { what: 'a haul that comes too late', bent: () => ({ ...plan, hauls: plan.hauls.map((haul) => ({ ...haul, latestAt: epochS(haul.latestAt + 7200) })) }), code: 'haul-wrong' },
    { what: 'a haul of nothing', bent: () => ({ ...plan, hauls: [...plan.hauls, { ...plan.hauls[0]!, load: 99 }] }), code: 'haul-for-nothing' },
    { what: 'a price made small', bent: () => ({ ...plan, worth: { ...plan.worth, totalMills: plan.worth.totalMills - 500 } }), code: 'wrong-worth' },
    { what: 'better than the bound', bent: () => ({ ...plan, boundMills: plan.worth.totalMills + 1 }), code: 'below-bound' },
    { what: 'a way the lot may not burn', bent: () => wood({ way: plan.loads[0]!.wood[0]!.way === 'as-is' ? 'trimmed' : 'as-is' }), code: 'may-not-burn-here' },
  ])('sees $what', ({ bent, code }) => {
    expect(checkPull(problem, bent() as PullPlan).map((violation) => violation.code)).toContain(code);
  });
  it('sees wood laid lengthwise under food at the fire end, and offcuts out of their hours', () => {
    const across = hand({ ways: hand().ways.map((way) => ({ ...way, asIs: { heatJ: 20e6, lies: 'lengthwise' as const } })) });
    const free: PullProblem = { ...across, pits: across.pits.map((pit) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, across: false })) })) };
    expect(checkPull(across, planPull(free, options)).map(({ code }) => code)).toContain('wrong-way');
    const offcuts = hand({ lots: hand().lots.map((lot) => ({ ...lot, offcut: true })) });
    expect(checkPull(offcuts, planPull(hand(), options)).map(({ code }) => code)).toContain('offcuts-out-of-hours');
  });
});

describe('a pit in the gusts burns 30 % more', () => {
  const before = planPull(hand(), options);
  // Two hours in: each cart has burned four of its twelve splits; the first pit now wants 52 MJ an hour.
  const later = hand({
    from: epochS(from + 7200),
    pits: hand().pits.map((pit, i) => ({ ...pit, hours: pit.hours.slice(2).map((one) => ({ ...one, needJ: i === 0 ? 52e6 : 40e6 })) })),
    piles: [{ id: 'dry', lotId: lotId('dry'), place: 'stack', pieces: 16 }, ...[1, 2].map((n) => ({ id: `cart-${n}`, lotId: lotId('dry'), place: n === 1 ? 'a' : 'b', cartOf: pitId(n), pieces: 8 }))],
  });
  const told = { toHaul: [], needJ: new Map([[pitId(1), 160e6], [pitId(2), 160e6]]), missingJ: new Map(), wishes: new Map() };
  it('is worth a new balance; a night on plan is not', () => {
    expect(before.worth.shortJ).toBe(0);
    expect(worthRepull(later, told)).toEqual({ because: 'runs-short', where: pitId(1) });
    expect(worthRepull({ ...later, pits: later.pits.map((pit) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, needJ: 40e6 })) })) }, told)).toBeUndefined();
  });
  it('three more splits are hauled to it, as a task, with the cause; nobody runs out', () => {
    const kept = { pitId: pitId(2), from: later.pits[1]!.hours[2]!.from, until: later.pits[1]!.hours[3]!.until, wood: [], heatJ: 0, shortJ: 0, reserveShortJ: 0, mixOffJ: 0 };
    const { plan, changes, kept: stays } = repullWood(later, { ...told, toHaul: [kept] }, options);
    expect(stays).toEqual([kept]);
    expect(plan.worth.shortJ).toBe(0);
    expect(changes).toEqual([{ pitId: pitId(1), lotId: lotId('dry'), piecesBefore: 8, piecesAfter: 11, because: 'burns-more' }]); // by hand: 208 - 160 = 48 MJ
    expect(plan.hauls).toMatchObject([{ pitId: pitId(1), pieces: 3, fromPlaces: ['stack'] }]);
  });
  it('a lack that the pull has owned up to is no news; wood that lies there to spare is', () => {
    const empty = { ...later, piles: later.piles.filter(({ id }) => id !== 'dry') };
    const owned = { ...told, missingJ: new Map([[pitId(1), 48e6]]) }; // by hand: 208 - 160 = 48 MJ
    expect(worthRepull(empty, told)).toEqual({ because: 'runs-short', where: pitId(1) });
    expect(worthRepull(empty, owned)).toBeUndefined();
    expect(worthRepull(empty, { ...owned, missingJ: new Map([[pitId(1), 47e6]]) })).toEqual({ because: 'runs-short', where: pitId(1) });
    expect(worthRepull(later, owned)).toEqual({ because: 'runs-short', where: pitId(1) });
  });
  it('a wish of the kitchen that is new is worth a balance of its pit alone, with that cause; one that is over asks for nothing', () => {
    const lots = [...hand().lots, { id: lotId('hickory'), species: 'hickory', pieceKg: 2, priceMills: 1200, wetPoints: 0, laterMills: 0 }];
    const asking = (mix: PullHour['mix']): PullProblem => ({
      ...later, lots, piles: [...later.piles, { id: 'hickory', lotId: lotId('hickory'), place: 'stack', pieces: 30 }], parameters: { mixMillsPerMj: 1000 },
      ways: [...later.ways, ...[1, 2].map((n) => ({ pitId: pitId(n), lotId: lotId('hickory'), asIs: { heatJ: 20e6, lies: 'across' as const } }))],
      pits: later.pits.map((pit, i) => ({ ...pit, hours: pit.hours.map((one) => ({ ...one, needJ: 40e6, mix: i === 1 ? mix : [] })) })),
    });
    const half = asking([{ species: ['hickory'], leastFrac: 0.5, mostFrac: 1 }]);
    expect(worthRepull(half, told)).toEqual({ because: 'mix-asked', where: pitId(2) });
    expect(worthRepull(half, { ...told, wishes: new Map([[pitId(2), wishesOf(half.pits[1]!)]]) })).toBeUndefined();
    expect(worthRepull(asking([]), { ...told, wishes: new Map([[pitId(2), wishesOf(half.pits[1]!)]]) })).toBeUndefined();
    const { plan, problem, changes } = repullWood(half, told, options);
    expect(checkPull(problem, plan)).toEqual([]);
    expect(plan.loads.map(({ pitId: id }) => id)).toEqual([pitId(2)]);
    expect(burned(plan, pitId(2), 'hickory')).toBe(4); // by hand: half of 160 MJ
    expect(changes).toContainEqual({ pitId: pitId(2), lotId: lotId('hickory'), piecesBefore: 0, piecesAfter: 4, because: 'mix-asked' });
  });
  it('with an empty stack the other cart gives what it can spare', () => {
    const scarce = { ...later, piles: later.piles.map((pile) => (pile.id === 'dry' ? { ...pile, pieces: 0 } : pile.id === 'cart-2' ? { ...pile, pieces: 11 } : pile)) };
    const { plan } = repullWood(scarce, told, options);
    expect(plan.worth.shortJ).toBe(0);
    expect(plan.hauls).toMatchObject([{ pitId: pitId(1), pieces: 3, fromPlaces: ['b'] }]);
  });
  it('a promised lot that is gone is noticed', () => {
    const gone = { ...hand(), piles: [{ id: 'dry', lotId: lotId('dry'), place: 'stack', pieces: 5 }, { id: 'wet', lotId: lotId('wet'), place: 'stack', pieces: 40 }] };
    const lost = { toHaul: before.loads, needJ: new Map([[pitId(1), 240e6], [pitId(2), 240e6]]), missingJ: new Map(), wishes: new Map() };
    expect(worthRepull(gone, lost)).toEqual({ because: 'stock-gone', where: 'dry' });
    expect(repullWood(gone, lost, options).changes.find(({ lotId: id }) => id === 'dry')!.because).toBe('stock-changed');
  });
});

describe('a problem that is none is refused by name', () => {
  const good = hand();
  it.each([
    { what: 'a pile of minus three', problem: hand({ piles: [{ ...good.piles[0]!, pieces: -3 }] }), code: 'below-zero' },
    { what: 'half a split', problem: hand({ piles: [{ ...good.piles[0]!, pieces: 2.5 }] }), code: 'not-whole' },
    { what: 'a lot twice', problem: hand({ lots: [...good.lots, good.lots[0]!] }), code: 'same-id-twice' },
    { what: 'a pile of no lot', problem: hand({ piles: [{ ...good.piles[0]!, lotId: lotId('x') }] }), code: 'unknown-lot' },
    { what: 'a pile nowhere', problem: hand({ piles: [{ ...good.piles[0]!, place: 'x' }] }), code: 'unknown-place' },
    { what: 'a way of no pit', problem: hand({ ways: [{ ...good.ways[0]!, pitId: pitId(9) }] }), code: 'unknown-pit' },
    { what: 'a pit without hours', problem: hand({ pits: [{ ...good.pits[0]!, hours: [] }, good.pits[1]!] }), code: 'no-hours' },
    { what: 'hours with a gap', problem: hand({ pits: [{ ...good.pits[0]!, hours: [hour(0), hour(2)] }, good.pits[1]!] }), code: 'hours-out-of-order' },
    { what: 'a wish for 120 %', problem: hand({ pits: [{ ...good.pits[0]!, hours: [hour(0, { mix: [{ species: ['oak'], leastFrac: 1.2, mostFrac: 1 }] })] }, good.pits[1]!] }), code: 'share-out-of-range' },
    { what: 'a cart that takes nothing', problem: hand({ pits: [{ ...good.pits[0]!, cartKg: 0 }, good.pits[1]!] }), code: 'cart-takes-nothing' },
    { what: 'a way that is none', problem: hand({ ways: [{ pitId: pitId(1), lotId: lotId('dry') }] }), code: 'way-empty' },
    { what: 'two ways of one lot', problem: hand({ ways: [good.ways[0]!, good.ways[0]!] }), code: 'way-twice' },
    { what: 'a walking table of another size', problem: hand({ places: ['stack', 'a', 'b', 'c'] }), code: 'walking-table-not-square' },
    { what: 'a price out of range', problem: hand({ parameters: { fairMills: -1 } }), code: 'parameter-out-of-range' },
  ])('$what: $code', ({ problem, code }) => {
    const result = validatePull(problem);
    expect(result.ok ? 'taken' : result.refusal.code).toBe(code);
  });
});

it('the simplex method: the textbook case of doors and windows, 3 x + 5 y under x <= 4, 2 y <= 12, 3 x + 2 y <= 18, is 36 (Hillier, Lieberman, from memory)', () => {
  const column = (entries: readonly (readonly [number, number])[]) => ({ row: entries.map(([row]) => row), value: entries.map(([, value]) => value) });
  const { x, isBest } = leastCost({
    rows: 3, rhs: Float64Array.from([4, 12, 18]), cost: [-3, -5, 0, 0, 0], upper: [1e9, 1e9, 1e9, 1e9, 1e9], start: [2, 3, 4],
    column: [column([[0, 1], [2, 3]]), column([[1, 2], [2, 2]]), column([[0, 1]]), column([[1, 1]]), column([[2, 1]])],
  });
  expect(isBest).toBe(true);
  expect([x[0], x[1]]).toEqual([2, 6]);
});
