import { z } from 'zod';
import { alarmKind } from './alarm.js';
import { commandKey, instant, note, personId, pitId, sentAt, seconds, shiftId, taskId } from './field.js';
import { band, skill } from './yard.js';

/** A task or a break of more than four hours is several. */
const LONGEST_S = 4 * 3600;

/** A break inside a window: begins at or after `earliestAt`, has begun by `latestAt`. */
export const breakPlan = z.strictObject({ id: z.uuid(), lengthS: seconds.min(300).max(LONGEST_S), earliestAt: instant, latestAt: instant });
export type BreakPlan = z.infer<typeof breakPlan>;
export const onShift = z.strictObject({ personId, startsAt: instant, endsAt: instant, breaks: z.array(breakPlan).max(8) });
export type OnShift = z.infer<typeof onShift>;
export const burning = z.strictObject({ pitId, band, lightAt: instant });
export type Burning = z.infer<typeof burning>;

/** The night: from, to, who works when, which pits burn. The same id again changes the shift. */
export const planShift = z.strictObject({
  key: commandKey,
  id: shiftId,
  startsAt: instant,
  endsAt: instant,
  people: z.array(onShift).max(40),
  pits: z.array(burning).max(60).refine((pits) => new Set(pits.map((pit) => pit.pitId)).size === pits.length, { message: 'each pit once' }),
});
export type PlanShift = z.infer<typeof planShift>;

/** Someone comes later, is away for a while, or is here again. */
export const reportPresence = z.strictObject({
  key: commandKey,
  personId,
  state: z.enum(['late', 'away', 'here']),
  /** late: when they will come. away: until when, or the end of their shift. */
  until: instant.optional(),
});
export type ReportPresence = z.infer<typeof reportPresence>;

export const reportBreak = z.strictObject({ key: commandKey, sentAt, breakId: z.uuid(), state: z.enum(['begun', 'ended']) });
export type ReportBreak = z.infer<typeof reportBreak>;

export const taskKind = z.enum(['light', 'load', 'turn', 'wrap', 'probe', 'unload', 'haul', 'trim', 'clear-ash']);
export type TaskKind = z.infer<typeof taskKind>;
export const addTask = z.strictObject({
  key: commandKey,
  id: taskId,
  kind: taskKind,
  pitId: pitId.nullable(),
  earliestAt: instant,
  dueAt: instant,
  latestAt: instant,
  lengthS: seconds.min(60).max(LONGEST_S),
  people: z.union([z.literal(1), z.literal(2)]),
  note: note.optional(),
});
export type AddTask = z.infer<typeof addTask>;
export const finishTask = z.strictObject({ key: commandKey, sentAt, doneAt: instant });
export type FinishTask = z.infer<typeof finishTask>;

export const signHandover = z.strictObject({ key: commandKey, toPersonId: personId.nullable(), note });
export type SignHandover = z.infer<typeof signHandover>;

export const breakView = breakPlan.extend({ beganAt: instant.nullable(), endedAt: instant.nullable(), plannedAt: instant.nullable() });
export const personOnShift = z.object({
  personId,
  name: z.string(),
  startsAt: instant,
  endsAt: instant,
  presence: z.enum(['here', 'late', 'away', 'not-yet', 'gone-home']),
  presenceUntil: instant.nullable(),
  onBreak: z.boolean(),
  breaks: z.array(breakView),
});
export type PersonOnShift = z.infer<typeof personOnShift>;
export const shiftView = z.object({
  id: shiftId,
  startsAt: instant,
  endsAt: instant,
  people: z.array(personOnShift),
  pits: z.array(burning),
});
export type ShiftView = z.infer<typeof shiftView>;
export const taskView = addTask.omit({ key: true }).extend({
  note: z.string().nullable(),
  doneAt: instant.nullable(),
  doneBy: personId.nullable(),
});
export type TaskView = z.infer<typeof taskView>;

export const handover = z.object({
  id: z.uuid(),
  signedAt: instant,
  signedBy: z.string(),
  to: z.string().nullable(),
  note: z.string(),
  fires: z.array(z.object({ pit: z.string(), bed: z.string().nullable(), tempC: z.number().nullable(), dueAt: instant.nullable() })),
  food: z.array(z.object({ pit: z.string(), cut: z.string(), pieces: z.number().int() })),
  splitsLeft: z.number().int(),
  openAlarms: z.number().int(),
  /** Each open check with its owner on one side; nobody by name where no next shift is planned. */
  openChecks: z.array(z.object({ pit: z.string(), dueAt: instant, latestSafeAt: instant, side: z.enum(['this-crew', 'next-crew']), owner: z.string().nullable() })),
  /** What people were told for the next two hours. */
  promised: z.array(z.object({ work: z.enum([...taskKind.options, 'check']), pit: z.string().nullable(), people: z.array(z.string()), at: instant })),
  alarms: z.array(z.object({ kind: alarmKind, pit: z.string().nullable(), since: instant })),
});
/** How the night stands before somebody signs it over. */
export const handoverNow = handover.omit({ id: true, signedAt: true, signedBy: true, note: true });
export type HandoverNow = z.infer<typeof handoverNow>;
export type Handover = z.infer<typeof handover>;

const skillNeed = z.object({ skill, needed: z.number().int(), present: z.number() });
/** How many people each hour of a shift needs, by fires, tasks and the usual work of its services. */
export const rosterView = z.object({
  shift: shiftView,
  hours: z.array(z.object({
    fromAt: instant, untilAt: instant, needed: z.number().int(), fewest: z.number().int(), present: z.number(), bySkill: z.array(skillNeed), loadFrac: z.number(), fails: z.boolean(),
    missingPeople: z.number().int(), mend: z.enum(['none', 'move-tasks', 'call-people', 'bank-fires-or-call']),
  })),
  /** Work that nobody planned yet and that the services will bring. */
  supposed: z.array(z.object({ kind: taskKind, cut: z.string(), at: instant })),
});
export type RosterView = z.infer<typeof rosterView>;
