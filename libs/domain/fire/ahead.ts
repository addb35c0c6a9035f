import { chamberK } from './advance.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { bedNearlyOut } from './grades.js';
import { BED_KG } from './layout.js';
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
}

/**
 * Rolls all members ahead without wood, minute by minute; minute 0 is now. A longer look begins with the shorter one, number
 * for number, so that one look serves both the fan and the due time.
 *
 * @param minutes  whole minutes, from 0 on
 */
export function lookAhead(belief: FireBelief, around: Surroundings, minutes: number): Ahead {
  const roll = startRoll(belief, around, MEMBERS, minutes);
  const { x } = roll.start;
  const count = (minutes + 1) * MEMBERS;
  const ahead = { minutes, tempC: new Float64Array(count), bedKg: new Float64Array(count), nearlyOut: new Uint8Array(count) };
  for (let minute = 0, at = 0; minute <= minutes; minute++) {
    if (minute > 0) rollMinute(roll, roll.start, minute - 1);
    for (let m = 0; m < MEMBERS; m++, at++) {
      const member = memberAt(m);
      ahead.tempC[at] = chamberK(x, member) - 273.15;
      ahead.bedKg[at] = x[member + BED_KG]!;
      ahead.nearlyOut[at] = bedNearlyOut(roll.p, x, member) ? 1 : 0;
    }
  }
  return ahead;
}
