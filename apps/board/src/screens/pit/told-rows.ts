import type { AdviceAction, CheckView, FirePage, ToldCheck } from '@stokehold/domain/contract';
import { fanAt } from './night-ribbon-shape.js';

/** What a forecast said for one moment beside what came. */
export interface ToldPoint {
  readonly aheadS: number;
  readonly lowC: number;
  readonly highC: number;
  readonly cameC: number | null;
  /** Where what came lay; null where there is nothing to compare, `uncompared` says why. */
  readonly side: 'inside' | 'above' | 'below' | null;
  readonly uncompared: ToldCheck['points'][number]['uncompared'];
}
/** What had come at the next look, and how the band fared: as told, and as it was. */
export interface ToldOutcome {
  readonly at: string;
  readonly lowC: number;
  readonly highC: number;
  readonly cameC: number;
  readonly side: NonNullable<ToldPoint['side']>;
  /** Null where it was to hold; `already` where it was out of the band when somebody looked. */
  readonly wasToLeave: string | 'already' | null;
  readonly left: string | 'already' | null;
}
/** One check with its two sides. */
export interface ToldRow {
  readonly checkId: string;
  readonly lookedAt: string;
  readonly check: CheckView | undefined;
  readonly advised: AdviceAction | null;
  readonly asAdvised: boolean;
  readonly points: readonly ToldPoint[];
  readonly outcome: ToldOutcome | null;
}

/** What was put on, as an advice would name it; undefined for what no advice asks. */
export function actionDone({ splits, size }: Pick<CheckView, 'splits' | 'size'>): AdviceAction | undefined {
  if (splits === 0) return 'rake';
  if (splits > 2) return undefined;
  const one = splits === 1;
  switch (size) {
    case 'standard':
      return one ? 'one' : 'two';
    case 'thin':
      return one ? 'one-thin' : 'two-thin';
    case 'thick':
      return one ? 'one-thick' : undefined;
    case 'offcut':
      return one ? 'offcut' : 'two-offcuts';
  }
}

/** The checks of a night with what was told at each and what came, the last one first. */
export const toldRows = (page: FirePage, checks: readonly CheckView[]): readonly ToldRow[] =>
  page.told
    .map((told): ToldRow => {
      const check = checks.find(({ id }) => id === told.checkId);
      return {
        checkId: told.checkId, lookedAt: told.lookedAt, check, advised: told.advised,
        asAdvised: check !== undefined && told.advised !== null && actionDone(check) === told.advised,
        points: told.points.flatMap(({ aheadS, cameC, uncompared }): ToldPoint[] => {
          const fan = fanAt(told, Date.parse(told.fan.from) + aheadS * 1000);
          if (!fan) return [];
          const side = cameC === null ? null : sideOf(cameC, fan);
          return [{ aheadS, lowC: fan.p10, highC: fan.p90, cameC, side, uncompared }];
        }),
        outcome: outcomeOf(told),
      };
    })
    .reverse();

const sideOf = (cameC: number, fan: { readonly p10: number; readonly p90: number }) => (cameC > fan.p90 ? 'above' : cameC < fan.p10 ? 'below' : 'inside');

/** A band that was left within so much of the check was out already. */
const AT_ONCE_MS = 3 * 60_000;

function outcomeOf(told: ToldCheck): ToldOutcome | null {
  const { outcome } = told;
  const fan = outcome && fanAt(told, Date.parse(outcome.at));
  if (!outcome || !fan) return null;
  const since = (at: string | null) => (at !== null && Date.parse(at) - Date.parse(told.fan.from) < AT_ONCE_MS ? 'already' : at);
  return {
    at: outcome.at, cameC: outcome.cameC, lowC: fan.p10, highC: fan.p90, side: sideOf(outcome.cameC, fan), wasToLeave: since(outcome.wasToLeaveAt), left: since(outcome.leftAt),
  };
}
