import type { ServiceCosts } from '@stokehold/domain/contract';

/** What the services of one week cost, Monday to Sunday, UTC. */
export interface WeekSum {
  readonly mondayMs: number;
  readonly woodCents: number;
  readonly crewCents: number;
  readonly meatCents: number;
  readonly totalCents: number;
  readonly services: number;
}
const DAY_MS = 86_400_000;
const WEEK_MS = 7 * DAY_MS;
/** 1970-01-05 was a Monday. */
const FIRST_MONDAY_MS = 4 * DAY_MS;

/** Sums by week, the oldest first; weeks without a service between them stand as nothing. */
export function weekSums(costs: ServiceCosts): readonly WeekSum[] {
  const mondayOf = (iso: string) => Math.floor((Date.parse(iso) - FIRST_MONDAY_MS) / WEEK_MS) * WEEK_MS + FIRST_MONDAY_MS;
  const mondays = costs.map(({ readyBy }) => mondayOf(readyBy));
  if (mondays.length === 0) return [];
  const [first, last] = [Math.min(...mondays), Math.max(...mondays)];
  return Array.from({ length: (last - first) / WEEK_MS + 1 }, (_, i) => {
    const mondayMs = first + i * WEEK_MS;
    const own = costs.filter(({ readyBy }) => mondayOf(readyBy) === mondayMs);
    const sum = (of: (one: ServiceCosts[number]) => number) => own.reduce((all, one) => all + of(one), 0);
    return { mondayMs, woodCents: sum((one) => one.woodCents), crewCents: sum((one) => one.crewCents), meatCents: sum((one) => one.meatCents), totalCents: sum((one) => one.totalCents), services: own.length };
  });
}

/** Services as rows of a table for spreadsheets, one a line. Money in the yard's currency. */
export function weekRows(costs: ServiceCosts): readonly (readonly (string | number)[])[] {
  const money = (cents: number) => (cents / 100).toFixed(2);
  return [
    ['service', 'ready by', 'portions', 'splits', 'wood', 'crew', 'meat', 'in all'],
    ...costs.map((one) => [one.name, one.readyBy, one.portions, one.splits.toFixed(2), ...[one.woodCents, one.crewCents, one.meatCents, one.totalCents].map(money)]),
  ];
}
