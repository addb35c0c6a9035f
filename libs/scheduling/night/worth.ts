import { MINUTE_S, type EpochS, type PitId } from '@stokehold/domain/quantity';
import type { FireWindow, Shown } from './facts.js';

/** A check may lie so far after its due, or before its earliest time, before the plan is made anew for it. */
const LATE_BEARABLE_S = 2 * MINUTE_S;
/** A fire that would be looked at so much too soon frees somebody for other work. */
const SOON_BEARABLE_S = 10 * MINUTE_S;
/** Work that nobody reported done so long after its planned end ran over. */
const OVERRUN_S = MINUTE_S;

/**
 * Whether fires whose due time moved make the plan worth a repair: their next check would come late, too early, past latest
 * safe, or is in no plan. Ten probes do not mean ten plans. Source: common practice, no source.
 *
 * @param moved.fires  the fires that moved, as they want it now
 * @param moved.shown  the plan as people see it
 * @param moved.until  end of the shift: what is due after it is the next crew's
 */
export function isWorthForDue(moved: { readonly fires: readonly FireWindow[]; readonly shown: readonly Shown[]; readonly now: EpochS; readonly until: EpochS }): boolean {
  return moved.fires.some(({ pitId, earliestAt, dueAt, latestSafeAt }) => {
    const startsAt = nextCheck(pitId, moved.shown, moved.now);
    if (startsAt === undefined) return dueAt < moved.until;
    return startsAt > latestSafeAt || startsAt > dueAt + LATE_BEARABLE_S || startsAt < earliestAt || startsAt < dueAt - SOON_BEARABLE_S;
  });
}

const nextCheck = (pitId: PitId, shown: readonly Shown[], now: EpochS): EpochS | undefined =>
  shown.filter(({ work, endsAt }) => work.kind === 'check' && work.pitId === pitId && endsAt > now).map(({ startsAt }) => startsAt).sort((one, other) => one - other)[0];

/**
 * Whether work of the plan should be over by now and nobody said so: whoever has it is held up, and what follows moves.
 * Work that is reported done leaves the plan, so all that still stands in it is open.
 */
export const isOverrun = (shown: readonly Pick<Shown, 'endsAt'>[], now: EpochS): boolean => shown.some(({ endsAt }) => endsAt + OVERRUN_S <= now);
