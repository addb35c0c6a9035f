import type { ServiceCost } from '@stokehold/domain/contract';

/** One piece of the bar that a service's cost is. */
export interface CostPart {
  readonly kind: 'wood' | 'crew';
  readonly name: string;
  readonly cents: number;
  /** Of the whole, 0 to 1. */
  readonly frac: number;
}

/** The cost split into its lots and its people, wood first, in each the dearest first; parts of nothing are left out. */
export function partsOf({ wood, crew, totalCents }: Pick<ServiceCost, 'wood' | 'crew' | 'totalCents'>): readonly CostPart[] {
  const part = (kind: CostPart['kind'], name: string, cents: number): CostPart => ({ kind, name, cents, frac: totalCents > 0 ? cents / totalCents : 0 });
  const dearestFirst = (parts: readonly CostPart[]) => [...parts].sort((a, b) => b.cents - a.cents || a.name.localeCompare(b.name)).filter(({ cents }) => cents > 0);
  return [
    ...dearestFirst(wood.map(({ lot, costCents }) => part('wood', lot, costCents))),
    ...dearestFirst(crew.map(({ person, costCents }) => part('crew', person, costCents))),
  ];
}

export interface CookLine {
  readonly id: string;
  readonly cut: string;
  readonly pieces: number;
  readonly woodCents: number;
  readonly crewCents: number;
  readonly totalCents: number;
  readonly perKgCents: number;
  /** What came off as a part of what went on; undefined while it is not weighed. */
  readonly yieldFrac: number | undefined;
}

/** The cooks of a service with what each has cost: the dearest first. */
export function cookLines({ cooks }: Pick<ServiceCost, 'cooks'>): readonly CookLine[] {
  return cooks
    .map(({ cook, woodCents, crewCents }) => ({
      id: cook.id, cut: cook.cut, pieces: cook.pieces, woodCents, crewCents,
      totalCents: woodCents + crewCents,
      perKgCents: (woodCents + crewCents) / cook.weightKg,
      yieldFrac: cook.yieldKg === null ? undefined : cook.yieldKg / cook.weightKg,
    }))
    .sort((a, b) => b.totalCents - a.totalCents || a.cut.localeCompare(b.cut));
}
