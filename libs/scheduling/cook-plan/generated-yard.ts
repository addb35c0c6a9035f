import { epochS, randomStream, type CookId, type PitId, type RandomStream, type ServiceId } from '@stokehold/domain/quantity';
import type { CookPit, CookPlanProblem, CookWay, PlannedCook } from './problem.js';

export interface GeneratedYard {
  readonly pits: number;
  readonly cooks: number;
  readonly services: number;
  readonly seed: number;
  readonly hours?: number;
  readonly stepS?: number;
  readonly members?: number;
  /** Kinds of pit that differ in size. Default 3. */
  readonly kinds?: number;
}

const FROM = 1_790_000_000 - (1_790_000_000 % 3600);
const HEATS = [{ tempC: 107, woodKgPerHour: 3.2, woodCentsPerHour: 210 }, { tempC: 121, woodKgPerHour: 3.9, woodCentsPerHour: 255 }, { tempC: 135, woodKgPerHour: 4.7, woodCentsPerHour: 310 }];
const HEAT_FACTOR = [1.45, 1, 0.8];

function takes(random: RandomStream, middleS: number, members: number): readonly number[] {
  return Array.from({ length: members }, () => Math.round(middleS * Math.max(0.6, 1 + 0.09 * random.normal()))).sort((a, b) => a - b);
}

function waysOf(random: RandomStream, hours: number, members: number): readonly CookWay[] {
  return HEATS.flatMap(({ tempC }, heat) => [undefined, 0.6].map((wrapFrac): CookWay => {
    const middleS = hours * 3600 * HEAT_FACTOR[heat]! * (wrapFrac === undefined ? 1 : 0.86);
    return { tempC, takesS: takes(random, middleS, members), outOf: members, cents: wrapFrac === undefined ? 0 : 180, ...(wrapFrac !== undefined && { wrapAfterS: Math.round(middleS * wrapFrac) }) };
  }));
}

/** A drawn yard and its cooks: long and short ones for several services a few hours apart. The same seed gives the same yard. For tests and benches. */
export function generatedYard({ pits, cooks, services, seed, hours = 30, stepS = 900, members = 200, kinds = 3 }: GeneratedYard): CookPlanProblem {
  const random = randomStream(seed);
  const until = epochS(FROM + hours * 3600);
  const made = Array.from({ length: pits }, (_, p): CookPit => ({
    id: `pit-${p + 1}` as PitId, areaM2: [1.3, 1.05, 1.6][p % Math.min(3, kinds)]!, bearsKg: 150, heats: HEATS, warmUpS: 5400, crewSPerHour: 720,
  }));
  const meals = Array.from({ length: services }, (_, s) => ({ id: `service-${s + 1}` as ServiceId, readyBy: epochS(until - (services - 1 - s) * 5 * 3600 - 3600) }));
  const lengths = [10, 8, 5, 3].map((length) => Math.min(length, (hours - 6) / 2.2));
  const made2 = Array.from({ length: cooks }, (_, c): PlannedCook => {
    const kind = random.below(4);
    const areaM2 = Math.round((0.15 + 0.4 * random.next()) * 1000) / 1000;
    return {
      id: `cook-${String(c + 1).padStart(2, '0')}` as CookId, serviceId: meals[c % services]!.id, areaM2, massKg: Math.round(areaM2 * 70), pieceKg: 2 + random.below(5),
      ways: waysOf(random, lengths[kind]! * (0.85 + 0.3 * random.next()), members), restLeastS: [3600, 2700, 1200, 900][kind]!, keepMostS: [28_800, 21_600, 10_800, 9000][kind]!, loadS: 480, wrapS: 600, unloadS: 360,
    };
  });
  return { from: epochS(FROM), until, pits: made, cooks: made2, services: meals, crew: [{ from: epochS(FROM), until, people: Math.max(2, Math.ceil(pits / 2.4)) }], parameters: { stepS } };
}
