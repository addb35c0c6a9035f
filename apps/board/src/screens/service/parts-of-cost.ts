import type { ServiceCost } from '@stokehold/domain/contract';

/** One piece of the bar that a service's cost is. */
export interface CostPart {
  readonly kind: 'wood' | 'crew' | 'meat';
  readonly name: string;
  readonly cents: number;
  /** Of the whole, 0 to 1. */
  readonly frac: number;
}

/** The cost split into its lots, its people and the meat, wood first, in each the dearest first; parts of nothing are left out. */
export function partsOf({ wood, crew, cooks, totalCents }: Pick<ServiceCost, 'wood' | 'crew' | 'cooks' | 'totalCents'>): readonly CostPart[] {
  const part = (kind: CostPart['kind'], name: string, cents: number): CostPart => ({ kind, name, cents, frac: totalCents > 0 ? cents / totalCents : 0 });
  const dearestFirst = (parts: readonly CostPart[]) => [...parts].sort((a, b) => b.cents - a.cents || a.name.localeCompare(b.name)).filter(({ cents }) => cents > 0);
  return [
    ...dearestFirst(wood.map(({ lot, costCents }) => part('wood', lot, costCents))),
    ...dearestFirst(crew.map(({ person, costCents }) => part('crew', person, costCents))),
    ...dearestFirst(cooks.map(({ cook, meatCents }) => part('meat', cook.cut, meatCents))),
  ];
}

export interface CookLine {
  readonly id: string;
  readonly cut: string;
  readonly pieces: number;
  readonly woodCents: number;
  readonly crewCents: number;
  readonly meatCents: number;
  readonly totalCents: number;
  readonly perKgCents: number;
  /** By what came off; undefined while it is not weighed. */
  readonly perServedKgCents: number | undefined;
  /** What came off as a part of what went on; undefined while it is not weighed. */
  readonly yieldFrac: number | undefined;
}

/** The cooks of a service with what each has cost: the dearest first. */
export function cookLines({ cooks }: Pick<ServiceCost, 'cooks'>): readonly CookLine[] {
  return cooks
    .map(({ cook, woodCents, crewCents, meatCents, totalCents, perServedKgCents }) => ({
      id: cook.id, cut: cook.cut, pieces: cook.pieces, woodCents, crewCents, meatCents, totalCents,
      perKgCents: totalCents / cook.weightKg,
      perServedKgCents: perServedKgCents ?? undefined,
      yieldFrac: cook.yieldKg === null ? undefined : cook.yieldKg / cook.weightKg,
    }))
    .sort((a, b) => b.totalCents - a.totalCents || a.cut.localeCompare(b.cut));
}

/** The sheet of a service as rows of a table for spreadsheets: one line a share, then the sums. Money in the yard's currency. */
export function costRows({ service, cooks, wood, crew, woodCents, crewCents, meatCents, totalCents, against }: ServiceCost): readonly (readonly (string | number)[])[] {
  const money = (cents: number) => (cents / 100).toFixed(2);
  return [
    ['service', 'kind', 'name', 'splits', 'hours', 'cost'],
    ...wood.map(({ lot, splits, costCents }) => [service.name, 'wood', lot, splits.toFixed(2), '', money(costCents)]),
    ...crew.map(({ person, workedS, costCents }) => [service.name, 'crew', person, '', (workedS / 3600).toFixed(2), money(costCents)]),
    ...cooks.map(({ cook, meatCents: cents }) => [service.name, 'meat', cook.cut, '', '', money(cents)]),
    ...cooks.map(({ cook, splits, totalCents: cents }) => [service.name, 'cook', cook.cut, splits.toFixed(2), '', money(cents)]),
    ...(against?.causes ?? []).map(({ cause, cents, splits }) => [service.name, 'against plan', cause, splits.toFixed(2), '', money(cents)]),
    ...(against?.pits ?? []).flatMap(({ pit, splits, plannedSplits, gusts }) => [
      [service.name, 'pit against plan', pit, (splits - plannedSplits).toFixed(2), '', ''],
      ...(gusts ? [[service.name, `gusts onto ${gusts.onto}, against plan`, pit, (gusts.splits - gusts.plannedSplits).toFixed(2), (gusts.lengthS / 3600).toFixed(2), '']] : []),
    ]),
    [service.name, 'sum', 'wood', '', '', money(woodCents)], [service.name, 'sum', 'crew', '', '', money(crewCents)], [service.name, 'sum', 'meat', '', '', money(meatCents)],
    [service.name, 'sum', 'in all', '', '', money(totalCents)],
  ];
}
