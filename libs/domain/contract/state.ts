import { z } from 'zod';
import { alarmView } from './alarm.js';
import { adviceView, checkView, dueView, fireView } from './check.js';
import { cookView, serviceSettings } from './food.js';
import { instant, personId, pitId, yardId } from './field.js';
import { planView } from './plan.js';
import { shiftView, taskView } from './shift.js';
import { weatherView } from './weather.js';
import { woodView } from './wood.js';
import { band, pitSettings, yardSettings } from './yard.js';

/** A pit as the screens show it: how it stands, and what its fire is doing. */
export const pitView = z.object({
  pit: pitSettings,
  /** The band and light-up time in the running shift; null when the pit rests tonight. */
  tonight: z.object({ band, lightAt: instant }).nullable(),
  fire: fireView.nullable(),
  due: dueView.nullable(),
  advice: adviceView.nullable(),
  /** The chamber's mean temperature as measured or, where nothing was measured, estimated; the last 70 minutes. */
  past: z.array(z.object({ at: instant, tempC: z.number() })),
  checks: z.array(checkView),
});
export type PitView = z.infer<typeof pitView>;

const slices = {
  yard: yardSettings.extend({ id: yardId, practice: z.boolean() }),
  people: z.array(z.object({ id: personId, name: z.string() })),
  shift: shiftView.nullable(),
  pits: z.array(pitView),
  tasks: z.array(taskView),
  plan: planView.nullable(),
  cooks: z.array(cookView),
  services: z.array(serviceSettings),
  wood: woodView,
  weather: weatherView,
  alarms: z.array(alarmView),
};

/** The yard's clock: on a practice night it runs `speed` times as fast as the real one. */
/** `aheadS`: the server's own clock shows so much more since it was set while a night ran, which goes on by the time of before; left out where it was not. */
export const yardClock = z.object({ now: instant, speed: z.number(), aheadS: z.number().int().optional() });
export type YardClock = z.infer<typeof yardClock>;

/** Everything a board shows, as of `seq`. */
export const yardState = z.object({ seq: z.number().int(), clock: yardClock, ...slices });
export type YardState = z.infer<typeof yardState>;

/** What one event changed: whole slices to put in place of the old ones; of the pits, only those that changed. */
export const liveChange = z.object({
  seq: z.number().int(),
  clock: yardClock,
  event: z.string(),
  changed: z.object(slices).partial(),
  pitsGone: z.array(pitId).optional(),
});
export type LiveChange = z.infer<typeof liveChange>;
/** Once a second: the server lives, and this is the last number it sent. */
export const liveBeat = z.object({ seq: z.number().int(), clock: yardClock });
export type LiveBeat = z.infer<typeof liveBeat>;
