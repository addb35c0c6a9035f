import type { AdviceAction, Assignment, PitView, YardState } from '@stokehold/domain/contract';
import { callsNow, holds } from '../../parts/alarms-said.js';

/** A prompt stands this long before the check is due. */
export const SOON_S = 5 * 60;

/** How much a fire asks of hands. grave: it runs away, is past latest safe, or its bed is nearly out. */
export type Level = 'quiet' | 'soon' | 'now' | 'grave';

/** What the wall says beside the person; `action` where the fire's advice says what to put on. */
export type What =
  | { readonly say: 'nothing' }
  | { readonly say: 'comes-off'; readonly at: string }
  | { readonly say: 'by-hand' }
  | { readonly say: 'action'; readonly action: AdviceAction; readonly late: boolean }
  | { readonly say: 'look'; readonly late: boolean }
  | { readonly say: 'running-away' }
  | { readonly say: 'past-latest-safe'; readonly latestAt: string }
  | { readonly say: 'bed-nearly-out' }
  | { readonly say: 'out' }
  | { readonly say: 'not-known' }
  | { readonly say: 'lights'; readonly at: string }
  | { readonly say: 'light-now' };

export interface Stripe {
  readonly view: PitView;
  readonly level: Level;
  /** The instant that the stripe counts down to; null when nothing is known. */
  readonly atMs: number | null;
  /** Whole minutes until then, or since then when `late`. */
  readonly minutes: number | null;
  readonly late: boolean;
  readonly people: readonly string[];
  readonly what: What;
  readonly lit: boolean;
  /** Its probe or the gateway failed: what is shown is reckoned from looks alone. */
  readonly unprobed: boolean;
  /** An alarm of this pit calls that is more than a note. */
  readonly unacknowledged: boolean;
}

function peopleFor(assignments: readonly Assignment[], isIt: (work: Assignment['work']) => boolean): readonly string[] {
  const next = assignments.filter((one) => isIt(one.work)).sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt))[0];
  return next?.people ?? [];
}

/** Whether its temperature climbs as no fed fire makes it: grease may burn, and nothing else is said of it. */
const runsAway = (view: PitView, state: YardState) =>
  state.alarms.some((alarm) => alarm.kind === 'running-away' && alarm.pitId === view.pit.id && holds(alarm));

/** Whether nothing measures its chamber any more: its probe failed, or the gateway that reads it fell silent. */
const isUnprobed = ({ pit }: PitView, { alarms }: YardState) =>
  alarms.some((alarm) => holds(alarm) && ((alarm.kind === 'probe-failed' && alarm.pitId === pit.id) || (alarm.kind === 'gateway-silent' && pit.probes.length > 0)));

function levelOf(view: PitView, dueMs: number | null, nowMs: number, away: boolean): Level {
  if (away) return 'grave';
  const mode = view.fire?.mode;
  if (mode === 'bed-nearly-out' || mode === 'out') return 'grave';
  if (view.due && nowMs >= Date.parse(view.due.latestSafeAt)) return 'grave';
  if (dueMs === null) return 'soon';
  if (nowMs >= dueMs) return 'now';
  return dueMs - nowMs <= SOON_S * 1000 ? 'soon' : 'quiet';
}

/** When the next food comes off this pit: as forecast last, else as planned; undefined while none lies there. */
function nextOff(pitId: string, cooks: YardState['cooks']): string | undefined {
  const on = cooks.filter(({ offAt, lies }) => offAt === null && lies.some((one) => one.pitId === pitId));
  return on.flatMap(({ forecast, comesOffAt }) => forecast?.p50At ?? comesOffAt ?? []).sort()[0];
}

function quietWhat(view: PitView, unprobed: boolean, state: YardState): What {
  if (unprobed) return { say: 'by-hand' };
  const at = nextOff(view.pit.id, state.cooks);
  return at ? { say: 'comes-off', at } : { say: 'nothing' };
}

function whatOf(view: PitView, { level, late, unprobed }: Pick<Stripe, 'level' | 'late' | 'unprobed'>, away: boolean, state: YardState): What {
  if (away) return { say: 'running-away' };
  if (!view.fire) return { say: 'not-known' };
  if (view.fire.mode === 'out') return { say: 'out' };
  if (view.fire.mode === 'bed-nearly-out') return { say: 'bed-nearly-out' };
  if (level === 'grave' && view.due) return { say: 'past-latest-safe', latestAt: view.due.latestSafeAt };
  if (level === 'quiet') return quietWhat(view, unprobed, state);
  return view.advice ? { say: 'action', action: view.advice.action, late } : { say: 'look', late };
}

const countdown = (atMs: number | null, nowMs: number) =>
  atMs === null ? null : Math.floor(Math.abs(atMs - nowMs) / 60_000);

function unlitStripe(view: PitView, lightAt: string, state: YardState, nowMs: number): Stripe {
  const atMs = Date.parse(lightAt);
  const lightTasks = new Set(state.tasks.filter((task) => task.kind === 'light' && task.pitId === view.pit.id).map((task) => task.id as string));
  const late = nowMs >= atMs;
  return {
    view, atMs, late,
    level: late ? 'now' : atMs - nowMs <= SOON_S * 1000 ? 'soon' : 'quiet',
    minutes: countdown(atMs, nowMs),
    people: peopleFor(state.plan?.assignments ?? [], (work) => work.kind === 'task' && lightTasks.has(work.taskId)),
    what: late ? { say: 'light-now' } : { say: 'lights', at: lightAt },
    lit: false,
    unprobed: false,
    unacknowledged: false,
  };
}

/** Not lit yet: the server believes of no burning fire, and no check was made since its light-up time came near. */
const isUnlit = (view: PitView, lightAt: string, nowMs: number) =>
  view.checks.length === 0 && (view.fire === null || view.fire.mode === 'out') && (nowMs < Date.parse(lightAt) || view.due === null) && !view.past.length;

/** A pit of tonight as its stripe on the wall; undefined for a pit that rests tonight. */
export function stripeOf(view: PitView, state: YardState, nowMs: number): Stripe | undefined {
  if (!view.tonight) return undefined;
  const away = runsAway(view, state);
  if (!away && isUnlit(view, view.tonight.lightAt, nowMs)) return unlitStripe(view, view.tonight.lightAt, state, nowMs);
  const dueMs = view.due ? Date.parse(view.due.dueAt) : null;
  const level = levelOf(view, dueMs, nowMs, away);
  const late = dueMs !== null && nowMs >= dueMs;
  const unprobed = isUnprobed(view, state);
  return {
    view, level, late, unprobed,
    atMs: dueMs,
    minutes: away ? null : countdown(dueMs, nowMs),
    people: peopleFor(state.plan?.assignments ?? [], (work) => work.kind === 'check' && work.pitId === view.pit.id),
    what: whatOf(view, { level, late, unprobed }, away, state),
    lit: true,
    unacknowledged: state.alarms.some((alarm) => alarm.pitId === view.pit.id && alarm.priority !== 'low' && callsNow(alarm)),
  };
}

/**
 * The stripes of tonight in the order in which the fires fall due, to the minute, so that two fires do not change places
 * each second; one that runs away stands above all, then those that are lost or about to be, and one that nothing is known of right after those.
 */
export function stripesOf(state: YardState, nowMs: number): readonly Stripe[] {
  const rank = (stripe: Stripe) => (stripe.what.say === 'running-away' ? -1 : stripe.level === 'grave' ? 0 : stripe.atMs === null ? 1 : 2);
  const minute = (stripe: Stripe) => Math.floor((stripe.atMs ?? 0) / 60_000);
  return state.pits
    .map((view) => stripeOf(view, state, nowMs))
    .filter((stripe) => stripe !== undefined)
    .sort((a, b) => rank(a) - rank(b) || minute(a) - minute(b) || (a.view.pit.name < b.view.pit.name ? -1 : 1));
}
