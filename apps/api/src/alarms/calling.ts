import { Injectable } from '@nestjs/common';
import { byPriority, calls, causesOf, mayCall, type Present, whoIsTold } from '@stokehold/domain/alarm';
import { type EpochS, fromIso, type PersonId, type PitId } from '@stokehold/domain/quantity';
import type { PlanView, ShiftView } from '@stokehold/domain/contract';
import { Plans } from '../planning/index.js';
import type { Deed } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { AlarmStore } from './alarm.store.js';
import type { KeptAlarm } from './kept-alarm.js';

/** Who is there at this moment, and who of them leads. */
interface Crew {
  readonly here: readonly PersonId[];
  readonly leads: readonly PersonId[];
  readonly plan: PlanView | null;
}

/** Calls people: whoever has the pit, then the lead, then everyone; what is only a consequence stands under its first cause. */
@Injectable()
export class Calling {
  constructor(
    private readonly store: AlarmStore,
    private readonly plans: Plans,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
  ) {}

  /** Holds the open alarms against the people who are there. Gives the pits of the alarms whose calling changed. */
  async call(deed: Deed): Promise<ReadonlySet<PitId | null>> {
    const open = [...(await this.store.open(deed.em, deed.yardId))].sort(byPriority);
    const causes = causesOf(open);
    const changed = new Set<PitId | null>();
    for (const alarm of open) {
      const underId = causes.get(alarm.id) ?? null;
      const isQuiet = !calls(alarm) || underId !== null;
      if (underId === alarm.underId && !(isQuiet && alarm.calledAt !== undefined)) continue;
      await this.store.keepCalling(deed, alarm.id, { underId, ...(isQuiet && { calledAt: null }) });
      changed.add(alarm.pitId);
    }
    const calling = open.filter((alarm) => calls(alarm) && !causes.has(alarm.id));
    if (calling.length === 0) return changed;
    const crew = await this.crew(deed);
    const wanting = calling.filter((alarm) => wantsMore(alarm, deed.now, crew));
    const callsOf = new Map(wanting.length > 0 ? await this.store.callsOf(deed.em, deed.yardId, deed.now) : []);
    for (const alarm of wanting) if (await this.callFor(deed, alarm, crew, callsOf)) changed.add(alarm.pitId);
    return changed;
  }

  /** Adds those who are to be told by now and were not; nobody is called more often than a person can heed. */
  private async callFor(deed: Deed, alarm: KeptAlarm, crew: Crew, callsOf: Map<PersonId, number>): Promise<boolean> {
    const since = alarm.calledAt ?? deed.now;
    const before = alarm.calledAt === undefined ? [] : alarm.told;
    const { tier, people } = whoIsTold(alarm.kind, since, deed.now, presentFor(alarm.pitId, crew));
    const anew = people.filter((person) => !before.includes(person) && mayCall(alarm.kind, callsOf.get(person) ?? 0));
    if (anew.length === 0 && alarm.calledAt !== undefined && tier === alarm.toldTier) return false;
    for (const person of anew) callsOf.set(person, (callsOf.get(person) ?? 0) + 1);
    await this.store.keepCalling(deed, alarm.id, { calledAt: new Date(since * 1000), toldTier: tier, told: [...before, ...anew] });
    if (anew.length > 0) await this.store.addCall(deed, alarm.id, anew);
    return true;
  }

  private async crew({ em, yardId, now }: Deed): Promise<Crew> {
    const [shift, plan, crew] = await Promise.all([this.shifts.view(em, yardId, now), this.plans.view(em, yardId), this.yards.crew(em, yardId)]);
    const here = hereOf(shift);
    const leading = crew.filter(({ role, left }) => role !== 'crew' && !left).map(({ id }) => id);
    return { here, plan, leads: here.filter((id) => leading.includes(id)) };
  }
}

const hereOf = (shift: ShiftView | null): PersonId[] => (shift?.people ?? []).filter(({ presence }) => presence === 'here').map(({ personId }) => personId);

/** Whether anybody is to be told who was not, or by now another tier. */
function wantsMore(alarm: KeptAlarm, now: EpochS, crew: Crew): boolean {
  const { tier, people } = whoIsTold(alarm.kind, alarm.calledAt ?? now, now, presentFor(alarm.pitId, crew));
  return alarm.calledAt === undefined || tier !== alarm.toldTier || people.some((person) => !alarm.told.includes(person));
}

/** Whoever looks at the pit next has it. */
function presentFor(pitId: PitId | null, { here, leads, plan }: Crew): Present {
  const looks = (plan?.assignments ?? []).filter(({ work }) => work.kind === 'check' && work.pitId === pitId);
  const next = looks.sort((a, b) => fromIso(a.startsAt) - fromIso(b.startsAt))[0];
  return { holders: (next?.people ?? []).filter((person) => here.includes(person)), leads, everyone: here };
}
