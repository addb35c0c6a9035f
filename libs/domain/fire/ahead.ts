import { chamberK } from './chamber-temp.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { bedNearlyOut } from './grades.js';
import { BED_KG, GAUGE_K, THIRDS } from './layout.js';
import type { Surroundings } from './pit.js';
import { rollMinute, startRoll } from './roll.js';

/** What all members do in the coming minutes if nobody touches the fire; member m of minute t stands at `t * MEMBERS + m`. */
export interface Ahead {
  readonly minutes: number;
  /** Middle of both ends' gauges. */
  readonly tempC: Float64Array;
  /** Loose coals. */
  readonly bedKg: Float64Array;
  /** 1 where the bed is nearly out. */
  readonly nearlyOut: Uint8Array;
  /** Gauges of the thirds every ZONE_STEP_MIN; member m of third k at step i stands at `(i * THIRDS + k) * MEMBERS + m`. */
  readonly thirdC: Float64Array;
}
/** How often the thirds are told apart ahead: they move together, so seldom is enough. */
export const ZONE_STEP_MIN = 10;

/**
 * Rolls all members ahead without wood, minute by minute; minute 0 is now. A longer look begins with the shorter one, number
 * for number, so that one look serves both the fan and the due time.
 *
 * @param minutes  whole minutes, from 0 on
 * @param further  asked at `minutes`: whether to look on until `most`
 */
export function lookAhead(
  belief: FireBelief, around: Surroundings, minutes: number, further?: { readonly most: number; readonly isWanted: (ahead: Ahead) => boolean },
): Ahead {
  const most = further?.most ?? minutes;
  const roll = startRoll(belief, around, MEMBERS, most);
  const { x } = roll.start;
  const count = (most + 1) * MEMBERS;
  const ahead = { minutes, tempC: new Float64Array(count), bedKg: new Float64Array(count), nearlyOut: new Uint8Array(count), thirdC: new Float64Array((Math.floor(most / ZONE_STEP_MIN) + 1) * THIRDS * MEMBERS) };
  for (let minute = 0; minute <= ahead.minutes; minute++) {
    if (minute > 0) rollMinute(roll, roll.start, minute - 1);
    for (let m = 0, at = minute * MEMBERS; m < MEMBERS; m++, at++) {
      const member = memberAt(m);
      ahead.tempC[at] = chamberK(x, member) - 273.15;
      ahead.bedKg[at] = x[member + BED_KG]!;
      ahead.nearlyOut[at] = bedNearlyOut(roll.p, x, member) ? 1 : 0;
    }
    if (minute % ZONE_STEP_MIN === 0) keepThirds(ahead.thirdC, (minute / ZONE_STEP_MIN) * THIRDS * MEMBERS, x);
    if (minute === minutes && further?.isWanted(ahead) === true) ahead.minutes = most;
  }
  return ahead;
}

function keepThirds(thirdC: Float64Array, from: number, x: Float64Array): void {
  for (let third = 0; third < THIRDS; third++) {
    for (let m = 0; m < MEMBERS; m++) thirdC[from + third * MEMBERS + m] = x[memberAt(m) + GAUGE_K + third]! - 273.15;
  }
}
