import type { CookView, CrewMember, ServiceCost, ServiceCosts, ServiceSettings } from '@stokehold/domain/contract';
import type { CostSheet, Span, Stay } from '@stokehold/domain/cost';
import { type Cents, cents, type CookId, type EpochS } from '@stokehold/domain/quantity';
import { wetMassKg } from '@stokehold/domain/wood';
import type { Lot } from '../wood/index.js';
import type { KeptLay } from './cost-books.js';
import type { WeighedCook } from './services.store.js';

const sumOf = <T>(all: readonly T[], of: (one: T) => number) => all.reduce((sum, one) => sum + of(one), 0);
const sumCents = (all: readonly { costCents: Cents }[]) => cents(sumOf(all, ({ costCents }) => costCents));

/** A cook's share of a pit while pieces of it lay there, as far as that was in a stretch. */
export function stayOf(lay: KeptLay, cooks: ReadonlyMap<CookId, WeighedCook>, span: Span): Stay {
  const cook = cooks.get(lay.cookId);
  const [from, until] = [Math.max(lay.from, span.from) as EpochS, Math.min(lay.until, span.until) as EpochS];
  return { cookId: lay.cookId, pitId: lay.pitId, weightKg: cook ? (cook.weightKg * lay.pieces) / cook.pieces : 0, from, until };
}

/** What the cooks of a service carry of their night. */
export function carriedBy(own: readonly { readonly id: CookId }[], night: CostSheet) {
  const ids = new Set<CookId | null>(own.map(({ id }) => id));
  const wood = night.wood.filter(({ cookId }) => ids.has(cookId));
  const hours = night.crew.filter(({ cookId }) => ids.has(cookId));
  const sheets = night.cooks.filter(({ cookId }) => ids.has(cookId));
  const [woodCents, crewCents, meatCents] = [sumCents(wood), sumCents(hours), cents(sumOf(sheets, ({ meatCents: meat }) => meat))];
  return { wood, hours, sheets, woodCents, crewCents, meatCents, totalCents: cents(woodCents + crewCents + meatCents), splits: sumOf(sheets, ({ splits }) => splits) };
}

/** The sheet of one service, from that of its night. */
export function sheetOf(given: {
  readonly service: ServiceSettings; readonly own: readonly CookView[]; readonly lots: readonly Lot[]; readonly crew: readonly CrewMember[];
  readonly meat: ReadonlyMap<CookId, Cents>; readonly night: CostSheet; readonly unpricedSplits: number; readonly against: ServiceCost['against'];
}): ServiceCost {
  const { service, own, lots, crew } = given;
  const { wood, hours, sheets, woodCents, crewCents, meatCents, totalCents } = carriedBy(own, given.night);
  const servedKg = sumOf(own, ({ yieldKg, weightKg }) => yieldKg ?? weightKg);
  return {
    service,
    cooks: own.flatMap((cook) => sheets.filter(({ cookId }) => cookId === cook.id).map((sheet) => ({
      cook, woodCents: sheet.woodCents, crewCents: sheet.crewCents, meatCents: sheet.meatCents, totalCents: sheet.totalCents, splits: sheet.splits, perServedKgCents: sheet.perServedKgCents ?? null,
    }))),
    wood: lots.flatMap((lot) => {
      const shares = wood.filter(({ lotId }) => lotId === lot.id);
      const splits = sumOf(shares, ({ pieces }) => pieces);
      return shares.length > 0 ? [{ lot: lot.name, splits, massKg: splits * wetMassKg(lot), costCents: sumCents(shares) }] : [];
    }),
    crew: crew.flatMap(({ id, name }) => {
      const shares = hours.filter(({ personId }) => personId === id);
      return shares.length > 0 ? [{ person: name, workedS: sumOf(shares, ({ paidS }) => paidS), costCents: sumCents(shares) }] : [];
    }),
    woodCents, crewCents, meatCents, totalCents,
    perPortionCents: service.portions > 0 ? totalCents / service.portions : null,
    perKgCents: servedKg > 0 ? totalCents / servedKg : null,
    unpricedSplits: given.unpricedSplits, unpricedMeat: own.filter(({ id }) => !given.meat.has(id)).length, against: given.against,
  };
}

/** One line of the weeks. */
export function lineOf(service: ServiceSettings, own: readonly { readonly id: CookId }[], night: CostSheet): ServiceCosts[number] {
  const { woodCents, crewCents, meatCents, totalCents, splits } = carriedBy(own, night);
  return { ...service, splits, woodCents, crewCents, meatCents, totalCents, perPortionCents: service.portions > 0 ? totalCents / service.portions : null };
}
