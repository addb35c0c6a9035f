import { fromIso, type EpochS, type PersonId, type PitId, type ShiftId } from '@stokehold/domain/quantity';
import type { BreakPlan, Setup, ShiftView } from '@stokehold/domain/contract';
import { isSecond, nightTime, nightTimeOf, wallOf, wallOnDay, type NightTime } from '../../units/typed-wall-time.js';

// The night as somebody types it: wall times and numbers are still text, so that nothing typed is lost when it cannot be read yet.

export interface DraftWall {
  readonly wall: string;
  readonly again: boolean;
}
export interface DraftBreak {
  readonly id: string;
  readonly minutes: string;
  readonly earliest: NightTime;
  readonly latest: NightTime;
}
export interface DraftPerson {
  readonly personId: PersonId;
  readonly works: boolean;
  readonly from: NightTime;
  readonly to: NightTime;
  readonly breaks: readonly DraftBreak[];
}
export interface DraftPit {
  readonly pitId: PitId;
  readonly burns: boolean;
  readonly low: string;
  readonly high: string;
  readonly light: NightTime;
}
export interface ShiftDraft {
  readonly id: ShiftId;
  readonly starts: DraftWall;
  readonly ends: DraftWall;
  readonly people: readonly DraftPerson[];
  readonly pits: readonly DraftPit[];
}

/** How the yard writes what it types. */
export interface Typing {
  readonly zone: string;
  readonly writeTempC: (tempC: number) => string;
  readonly readTempC: (typed: string) => number | undefined;
}

const draftWall = (at: EpochS, zone: string): DraftWall => ({ wall: wallOf(at, zone), again: isSecond(at, zone) });

const draftBreak = (zone: string) => (rest: BreakPlan): DraftBreak => ({
  id: rest.id,
  minutes: String(Math.round(rest.lengthS / 60)),
  earliest: nightTimeOf(fromIso(rest.earliestAt), zone),
  latest: nightTimeOf(fromIso(rest.latestAt), zone),
});

type Yard = Pick<Setup, 'pits' | 'crew'>;
const burnable = (yard: Yard) => yard.pits.filter((pit) => !pit.retired);
const working = (yard: Yard) => yard.crew.filter((person) => !person.left);

/** A planned shift, back in the form it was typed in; pits and people not in it are there to be chosen. */
export function draftOf(shift: ShiftView, yard: Yard, typing: Typing): ShiftDraft {
  const { zone, writeTempC } = typing;
  const time = (iso: string) => nightTimeOf(fromIso(iso), zone);
  return {
    id: shift.id,
    starts: draftWall(fromIso(shift.startsAt), zone),
    ends: draftWall(fromIso(shift.endsAt), zone),
    people: working(yard).map(({ id }) => {
      const there = shift.people.find(({ personId }) => personId === id);
      const hours = there ?? shift;
      const breaks = (there?.breaks ?? []).map(draftBreak(zone));
      return { personId: id, works: there !== undefined, from: time(hours.startsAt), to: time(hours.endsAt), breaks };
    }),
    pits: burnable(yard).map(({ id, band }) => {
      const lit = shift.pits.find(({ pitId }) => pitId === id);
      const kept = lit?.band ?? band;
      const light = time(lit?.lightAt ?? shift.startsAt);
      return { pitId: id, burns: lit !== undefined, low: writeTempC(kept.lowC), high: writeTempC(kept.highC), light };
    }),
  };
}

/** An unplanned night from seven in the evening to seven in the morning: everybody works and every pit burns, until somebody says otherwise. */
export function freshDraft(id: ShiftId, now: EpochS, yard: Yard, typing: Typing): ShiftDraft {
  const { zone, writeTempC } = typing;
  const evening = '19:00';
  const morning = '07:00';
  return {
    id,
    starts: { wall: wallOnDay(now, 0, evening, zone), again: false },
    ends: { wall: wallOnDay(now, 1, morning, zone), again: false },
    people: working(yard).map((person) => ({
      personId: person.id, works: true, from: nightTime(evening), to: nightTime(morning), breaks: [],
    })),
    pits: burnable(yard).map((pit) => ({
      pitId: pit.id, burns: true, low: writeTempC(pit.band.lowC), high: writeTempC(pit.band.highC), light: nightTime(evening),
    })),
  };
}
