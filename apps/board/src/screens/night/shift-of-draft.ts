import { fromIso, HOUR_S, later, toIso, type EpochS } from '@stokehold/domain/quantity';
import { LEAD_S } from '@stokehold/domain/shift';
import { planShift, type Burning, type OnShift, type PlanShift } from '@stokehold/domain/contract';
import { chosen, meaningOf, momentOf, type NightTime, type WallMeaning } from '../../units/typed-wall-time.js';
import type { DraftBreak, DraftPerson, DraftPit, ShiftDraft, Typing } from './shift-draft.js';

/** What stands in the way of a plan, and at which field. */
export interface Fault {
  readonly field: string;
  readonly code:
    | 'time-missing' | 'time-skipped' | 'ends-before-it-begins' | 'outside-shift' | 'number-unreadable' | 'band-upside-down'
    | 'break-length' | 'break-window' | 'out-of-range';
  readonly values?: Readonly<Record<string, string>>;
}
export type Night = Omit<PlanShift, 'key'>;
export type NightRead = { readonly night: Night; readonly faults: readonly [] } | { readonly night: undefined; readonly faults: readonly Fault[] };

/** Reads fields and collects what is wrong with them, so that every fault is told at once, each at its field. */
class Reader {
  readonly faults: Fault[] = [];
  constructor(private readonly typing: Typing) {}

  fault(field: string, code: Fault['code'], values?: Fault['values']): undefined {
    this.faults.push(values ? { field, code, values } : { field, code });
    return undefined;
  }
  moment(field: string, meaning: WallMeaning, again: boolean): EpochS | undefined {
    if (meaning.kind === 'skipped') return this.fault(field, 'time-skipped', { from: meaning.from, to: meaning.to });
    return chosen(meaning, again) ?? this.fault(field, 'time-missing');
  }
  wall(field: string, typed: { wall: string; again: boolean }) {
    return this.moment(field, meaningOf(typed.wall, this.typing.zone), typed.again);
  }
  time(field: string, typed: NightTime, from: EpochS) {
    return this.moment(field, momentOf(typed, from, this.typing.zone), typed.again);
  }
  temp(field: string, typed: string) {
    return this.typing.readTempC(typed) ?? this.fault(field, 'number-unreadable');
  }
}

/** The shift that the typed night means: wall times become instants in the yard's zone. */
export function nightOf(draft: ShiftDraft, typing: Typing): NightRead {
  const read = new Reader(typing);
  const startsAt = read.wall('starts', draft.starts);
  const endsAt = read.wall('ends', draft.ends);
  if (startsAt === undefined || endsAt === undefined) return { night: undefined, faults: read.faults };
  if (endsAt <= startsAt) {
    read.fault('ends', 'ends-before-it-begins');
    return { night: undefined, faults: read.faults };
  }
  const shift = { startsAt, endsAt };
  const people = draft.people.filter(({ works }) => works).flatMap((person) => hoursOf(person, shift, read) ?? []);
  const pits = draft.pits.filter(({ burns }) => burns).flatMap((pit) => fireOf(pit, shift, read) ?? []);
  if (read.faults.length > 0) return { night: undefined, faults: read.faults };
  return held({ id: draft.id, startsAt: toIso(startsAt), endsAt: toIso(endsAt), people, pits });
}

interface Span {
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
}

function hoursOf(person: DraftPerson, shift: Span, read: Reader): OnShift | undefined {
  const field = `people.${person.personId}`;
  const startsAt = read.time(`${field}.from`, person.from, later(shift.startsAt, -LEAD_S));
  const endsAt = startsAt === undefined ? undefined : read.time(`${field}.to`, person.to, later(startsAt, 60));
  if (startsAt === undefined || endsAt === undefined) return undefined;
  if (startsAt >= shift.endsAt) return read.fault(`${field}.from`, 'outside-shift');
  if (endsAt > later(shift.endsAt, LEAD_S)) return read.fault(`${field}.to`, 'outside-shift');
  const breaks = person.breaks.flatMap((rest) => restOf(rest, `${field}.breaks.${rest.id}`, { startsAt, endsAt }, read) ?? []);
  return { personId: person.personId, startsAt: toIso(startsAt), endsAt: toIso(endsAt), breaks };
}

function restOf(rest: DraftBreak, field: string, hours: Span, read: Reader): OnShift['breaks'][number] | undefined {
  const minutes = Number(rest.minutes.trim());
  if (rest.minutes.trim() === '' || !Number.isInteger(minutes) || minutes < 5 || minutes > 240) return read.fault(`${field}.minutes`, 'break-length');
  const earliestAt = read.time(`${field}.earliest`, rest.earliest, hours.startsAt);
  const latestAt = earliestAt === undefined ? undefined : read.time(`${field}.latest`, rest.latest, earliestAt);
  if (earliestAt === undefined || latestAt === undefined) return undefined;
  if (later(latestAt, minutes * 60) > hours.endsAt) return read.fault(`${field}.latest`, 'break-window');
  return { id: rest.id, lengthS: minutes * 60, earliestAt: toIso(earliestAt), latestAt: toIso(latestAt) };
}

function fireOf(pit: DraftPit, shift: Span, read: Reader): Burning | undefined {
  const field = `pits.${pit.pitId}`;
  const lowC = read.temp(`${field}.low`, pit.low);
  const highC = read.temp(`${field}.high`, pit.high);
  const lightAt = read.time(`${field}.light`, pit.light, later(shift.startsAt, -LEAD_S));
  if (lowC === undefined || highC === undefined || lightAt === undefined) return undefined;
  if (highC <= lowC) return read.fault(`${field}.high`, 'band-upside-down');
  if (lightAt >= shift.endsAt) return read.fault(`${field}.light`, 'outside-shift');
  return { pitId: pit.pitId, band: { lowC, highC }, lightAt: toIso(lightAt) };
}

/** The contract has the last word on ranges; what it objects to is told at the field it speaks of. */
function held(night: Night): NightRead {
  const parsed = planShift.omit({ key: true }).safeParse(night);
  if (parsed.success) return { night: parsed.data, faults: [] };
  const faults = parsed.error.issues.map(({ path }): Fault => {
    const [list, index, ...rest] = path;
    const owner = list === 'pits' ? night.pits[Number(index)]?.pitId : list === 'people' ? night.people[Number(index)]?.personId : undefined;
    const last = rest.at(-1);
    const part = last === 'highC' ? 'high' : last === 'lowC' ? 'low' : String(last ?? '');
    return { field: owner ? `${String(list)}.${owner}.${part}` : String(list), code: 'out-of-range' };
  });
  return { night: undefined, faults };
}

/** Hours between begin and end of a night, as the clock of the sun counts them. */
export const hoursLong = (night: Pick<Night, 'startsAt' | 'endsAt'>): number => (fromIso(night.endsAt) - fromIso(night.startsAt)) / HOUR_S;
