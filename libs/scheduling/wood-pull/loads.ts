import type { EpochS, PitId } from '@stokehold/domain/quantity';
import { parameter, type PullHour, type PullPit, type PullProblem } from './problem.js';

/** The kitchen's wish for a load, weighed by the heat of its hours. */
export interface LoadShare {
  readonly species: readonly string[];
  readonly leastFrac: number;
  readonly mostFrac: number;
}
/** Hours that one cart load is for. */
export interface LoadWant {
  readonly pitId: PitId;
  /** Index of the pit, and of this load among the pit's. */
  readonly pit: number;
  readonly nth: number;
  readonly from: EpochS;
  readonly until: EpochS;
  readonly needJ: number;
  readonly offcutJ: number;
  /** Need from the night's start to the end of this load, and the reserve that lies on the cart then. */
  readonly needSoFarJ: number;
  readonly reserveJ: number;
  readonly across: boolean;
  readonly shares: readonly LoadShare[];
  readonly cartKg: number;
}

/** Of a full cart that is planned for: what is left for uneven splits. Source: common practice, no source. */
const CART_FILL = 0.9;

/**
 * Cuts each pit's night into as few cart loads as its cart allows, at whole hours, as even as the hours let them be.
 *
 *     loads = ceil( (need + reserve) / (0.9 cart kg * least heat per kg of wood that may burn there) )
 */
export function loadsOf(problem: PullProblem): readonly LoadWant[] {
  return problem.pits.flatMap((pit, at) => {
    const needJ = sum(pit.hours, ({ needJ: need }) => need);
    const fullJ = CART_FILL * pit.cartKg * leastHeatPerKg(problem, pit);
    const wanted = needJ + parameter(problem, 'reserveDeviations') * sum(pit.hours, ({ spreadJ }) => spreadJ);
    const count = Math.min(pit.hours.length, Math.max(1, Math.ceil(wanted / fullJ)));
    const groups: PullHour[][] = Array.from({ length: count }, () => []);
    let soFar = 0;
    pit.hours.forEach((hour, i) => {
      const byNeed = needJ > 0 ? Math.floor(((soFar + hour.needJ / 2) / needJ) * count) : 0;
      const before = groups.filter((group) => group.length > 0).length - 1;
      const hoursLeft = pit.hours.length - i;
      const least = Math.max(before, count - hoursLeft);
      groups[Math.min(Math.max(byNeed, least, 0), before + 1, count - 1)]!.push(hour);
      soFar += hour.needJ;
    });
    return wantsOf(problem, pit, at, groups.filter((group) => group.length > 0));
  });
}

const sum = <T>(all: readonly T[], of: (one: T) => number) => all.reduce((total, one) => total + of(one), 0);

function leastHeatPerKg(problem: PullProblem, pit: PullPit): number {
  const perKg = problem.ways.filter((way) => way.pitId === pit.id).flatMap((way) => {
    const lot = problem.lots.find(({ id }) => id === way.lotId);
    return lot && !lot.offcut ? [(way.asIs ?? way.trimmed)!.heatJ / lot.pieceKg] : [];
  });
  return perKg.length > 0 ? Math.min(...perKg) : 1.2e7;
}

function wantsOf(problem: PullProblem, pit: PullPit, at: number, groups: readonly (readonly PullHour[])[]): readonly LoadWant[] {
  let [needSoFarJ, spreadSoFarJ] = [0, 0];
  return groups.map((hours, nth) => {
    const needJ = sum(hours, (hour) => hour.needJ);
    needSoFarJ += needJ;
    spreadSoFarJ += sum(hours, ({ spreadJ }) => spreadJ);
    return {
      pitId: pit.id, pit: at, nth, from: hours[0]!.from, until: hours.at(-1)!.until, needJ, needSoFarJ,
      reserveJ: Math.round(parameter(problem, 'reserveDeviations') * spreadSoFarJ),
      offcutJ: sum(hours.filter(({ offcuts }) => offcuts), (hour) => hour.needJ),
      across: hours.some(({ across }) => across), shares: sharesOf(hours, needJ), cartKg: pit.cartKg,
    };
  });
}

/** Hours without a wish for these species take any. */
function sharesOf(hours: readonly PullHour[], needJ: number): readonly LoadShare[] {
  const keyOf = (species: readonly string[]) => [...species].sort().join(' ');
  const keys = [...new Set(hours.flatMap(({ mix }) => mix.map(({ species }) => keyOf(species))))].sort();
  return keys.map((key) => {
    const weighed = (bound: 'leastFrac' | 'mostFrac', free: number) =>
      needJ > 0 ? sum(hours, (hour) => hour.needJ * (hour.mix.find(({ species }) => keyOf(species) === key)?.[bound] ?? free)) / needJ : free;
    return { species: key.split(' '), leastFrac: weighed('leastFrac', 0), mostFrac: weighed('mostFrac', 1) };
  });
}
