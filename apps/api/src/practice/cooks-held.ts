import type { CookForecast, CookView } from '@stokehold/domain/contract';
import { type CookId, type EpochS, fromIso, HOUR_S, MINUTE_S } from '@stokehold/domain/quantity';

/** Looks at a cook are told apart by how much of it was gone. */
const THIRDS = [1, 2, 3] as const;

/** Of the done times that the screens said, how many held the true one: 0.80 from p10 to p90 and 0.05 after p95 is what they claim. */
export interface CooksReport {
  readonly cooks: readonly {
    readonly third: (typeof THIRDS)[number];
    readonly cooks: number;
    readonly looks: number;
    readonly insideFrac: number;
    readonly afterP95Frac: number;
    /** Median width from p10 to p90, and median of how far the middle was off. */
    readonly bandHours: number;
    readonly offMinutes: number;
  }[];
}

interface Said {
  readonly cookId: CookId;
  readonly onAt: EpochS;
  readonly at: EpochS;
  readonly forecast: CookForecast;
}
interface Held {
  readonly cookId: CookId;
  readonly third: number;
  readonly inside: boolean;
  readonly afterP95: boolean;
  readonly bandS: number;
  readonly offS: number;
}

/** Done times as they were shown, each to be held against when its cook was truly done. */
export class CooksHeld {
  private readonly said: Said[] = [];

  note(cooks: readonly CookView[], at: EpochS): void {
    for (const { id, onAt, offAt, forecast } of cooks) if (onAt !== null && offAt === null && forecast) this.said.push({ cookId: id, onAt: fromIso(onAt), at, forecast });
  }

  /** @param doneAt  when each cook was truly done, had it stayed; a look at one that was done already counts no more */
  report(doneAt: (cookId: CookId) => EpochS | undefined): CooksReport {
    const held = this.said.flatMap((said) => heldOf(said, doneAt(said.cookId)) ?? []);
    return {
      cooks: THIRDS.flatMap((third) => {
        const own = held.filter((one) => one.third === third);
        if (own.length === 0) return [];
        const share = (of: (one: Held) => boolean) => Math.round((1000 * own.filter(of).length) / own.length) / 1000;
        return [{
          third, cooks: new Set(own.map(({ cookId }) => cookId)).size, looks: own.length, insideFrac: share(({ inside }) => inside), afterP95Frac: share(({ afterP95 }) => afterP95),
          bandHours: Math.round((10 * median(own.map(({ bandS }) => bandS))) / HOUR_S) / 10, offMinutes: Math.round(median(own.map(({ offS }) => Math.abs(offS))) / MINUTE_S),
        }];
      }),
    };
  }
}

function heldOf({ cookId, onAt, at, forecast }: Said, doneAt: EpochS | undefined): Held | undefined {
  if (doneAt === undefined || doneAt <= at) return undefined;
  const [p10, p50, p90, p95] = [forecast.p10At, forecast.p50At, forecast.p90At, forecast.p95At].map((iso) => (iso === null ? Infinity : fromIso(iso))) as [number, number, number, number];
  const third = Math.min(THIRDS.length, 1 + Math.floor((THIRDS.length * (at - onAt)) / (doneAt - onAt)));
  return { cookId, third, inside: doneAt >= p10 && doneAt <= p90, afterP95: doneAt > p95, bandS: p90 - p10, offS: p50 - doneAt };
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
