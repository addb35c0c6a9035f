import { HOUSE_PARTS, type Finding, type FindingFigures, type HousePart } from '@stokehold/domain/contract';
import type { HouseFacts, ProcessSeen } from './facts.js';

/** What is found of a part, with how long it is so, s; undefined where nobody knows. */
export interface Judged {
  readonly finding: Finding;
  readonly forS: number | undefined;
  readonly figures: Omit<FindingFigures, 'lastAt'> & { readonly lastAgoS?: number | undefined };
}

/** From here on each is said. Source of all: our own targets and choices, resting on nothing published. */
export const LIMITS = {
  /** A command is asked to be answered within 0.15 s for 95 of 100. */
  slowS: 0.25,
  fullForS: 60,
  fillingFrac: 0.8,
  nearlyFullFrac: 0.9,
  outboxBehindS: 10,
  outboxStuckS: 120,
  /** Told within the minute by whoever carries the yard, four seconds later by the process that leads. */
  tickLateS: 90,
  nobodyLeadsS: 15,
  beatS: 4,
  endedS: 3600,
  forecastHoldsS: 12 * 3600,
  webhookBehindS: 60,
  webhookSilentS: 900,
  backupOldS: 26 * 3600,
  processSilentS: 15,
  /** A process that was taken away on purpose is no longer missed. */
  processMissedS: 3600,
} as const;

const found = (finding: Finding, forS?: number, figures: Judged['figures'] = {}): Judged => ({ finding, forS, figures });
const isHeard = ({ agoS }: ProcessSeen) => agoS <= LIMITS.processSilentS;
const least = (all: readonly (number | undefined)[]) => all.reduce((one, other) => (other === undefined || (one !== undefined && one <= other) ? one : other), undefined);
const most = (all: readonly number[]) => (all.length > 0 ? Math.max(...all) : undefined);
const longestRunning = ({ processes }: HouseFacts) => most(processes.filter(isHeard).map(({ runsForS }) => runsForS));

/** How every part of the house stands, by what is known of it. Held to judge.test.ts */
export const judge = (facts: HouseFacts): readonly Judged[] => HOUSE_PARTS.map((part) => JUDGES[part](facts));

const JUDGES: Readonly<Record<HousePart, (facts: HouseFacts) => Judged>> = {
  database: ({ database: { answerS, forS, sizeBytes, full, elsewhere } }) => {
    if (answerS === undefined) return found('database-away', forS);
    if (full && full.lastAgoS <= LIMITS.fullForS) return found('database-full', full.forS, { lastAgoS: full.lastAgoS, elsewhere });
    return found(answerS >= LIMITS.slowS ? 'database-slow' : 'database-answers', forS, { answerS, ...(sizeBytes !== undefined && { sizeBytes }) });
  },

  disk: ({ processes, database: { elsewhere } }) => {
    const disks = processes.filter(isHeard).flatMap(({ disk }) => disk ?? []).sort((one, other) => Number(other.isOut) - Number(one.isOut) || other.usedFrac - one.usedFrac);
    const [disk] = disks;
    if (!disk) return found('disk-unread');
    const { usedFrac, leftBytes, isOut, forS } = disk;
    const finding = isOut ? 'disk-full' : usedFrac >= LIMITS.nearlyFullFrac ? 'disk-nearly-full' : usedFrac >= LIMITS.fillingFrac ? 'disk-filling' : 'disk-room';
    return found(finding, forS, { usedFrac, leftBytes, elsewhere });
  },

  outbox: (facts) => {
    const { waiting, oldestAgoS } = facts.outbox;
    if (oldestAgoS === undefined || oldestAgoS < LIMITS.outboxBehindS) return found('outbox-empty', longestRunning(facts));
    return found(oldestAgoS < LIMITS.outboxStuckS ? 'outbox-behind' : 'outbox-stuck', oldestAgoS, { count: waiting });
  },

  tick: ({ minute: { shiftRunsForS, toldAgoS }, processes }) => {
    const last = { lastAgoS: toldAgoS };
    if (shiftRunsForS !== undefined) {
      const waitedS = Math.min(toldAgoS ?? Infinity, shiftRunsForS);
      if (waitedS > LIMITS.tickLateS) return found('tick-late', waitedS, last);
    }
    const leads = processes.some((one) => isHeard(one) && one.leads);
    const runsForS = most(processes.filter(isHeard).map((one) => one.runsForS));
    if (!leads && runsForS !== undefined && runsForS > LIMITS.nobodyLeadsS) return found('nobody-leads', undefined, last);
    return shiftRunsForS === undefined ? found('tick-rests', undefined, last) : found('tick-told', shiftRunsForS, last);
  },

  clock: ({ processes }) => {
    const clocks = processes.filter(isHeard).map(({ clock }) => clock);
    const held = clocks.find(({ aheadS }) => aheadS !== 0);
    return held ? found('clock-held', held.forS, { aheadS: held.aheadS }) : found('clock-steady', most(clocks.map(({ forS }) => forS)));
  },

  push: (facts) => {
    const open = facts.processes.filter((one) => isHeard(one) && one.boards > 0);
    const count = open.reduce((sum, { boards }) => sum + boards, 0);
    if (count === 0) return found('push-nobody');
    const silent = open.filter(({ beatAgoS, runsForS }) => (beatAgoS ?? runsForS) > LIMITS.beatS);
    const lastAgoS = least(open.map(({ beatAgoS }) => beatAgoS));
    if (silent.length > 0) return found('push-silent', most(silent.map(({ beatAgoS, runsForS }) => beatAgoS ?? runsForS)), { count: silent.reduce((sum, { boards }) => sum + boards, 0), of: count, lastAgoS });
    return found('push-beats', longestRunning(facts), { count, lastAgoS });
  },

  computations: (facts) => {
    if (facts.leftAside.count > 0) return found('work-left-aside', facts.leftAside.agoS, { count: facts.leftAside.count });
    const lately = facts.processes.flatMap(({ ended }) => ended).filter(({ agoS }) => agoS <= LIMITS.endedS);
    if (lately.length === 0) return found('computations-end', longestRunning(facts));
    const names = [...new Set(lately.map(({ name }) => name))].sort();
    return found('computations-ended', most(lately.map(({ agoS }) => agoS)), { count: lately.length, names, lastAgoS: least(lately.map(({ agoS }) => agoS)) });
  },

  probes: ({ probes: { of, silent, silentForS, readAgoS, gateways, fireBurns } }) => {
    const figures = { count: of - silent, of, lastAgoS: readAgoS };
    if (of === 0 && gateways.length === 0) return found('probes-none');
    if (!fireBurns) return found('probes-rest', undefined, figures);
    if (of > 0 && silent === of) return found('probes-silent', readAgoS, { ...figures, names: gateways.map(({ name }) => name) });
    if (gateways.length > 0) return found('gateways-silent', most(gateways.map((one) => one.silentForS)), { ...figures, names: gateways.map(({ name }) => name) });
    return silent > 0 ? found('probes-some-silent', silentForS, { ...figures, count: silent }) : found('probes-read', undefined, figures);
  },

  broker: ({ brokerIsSet, processes }) => {
    if (!brokerIsSet) return found('broker-none');
    const held = processes.filter(isHeard).flatMap(({ broker }) => broker ?? []);
    const there = held.find(({ isThere }) => isThere);
    return there ? found('broker-there', there.forS) : found('broker-away', most(held.map(({ forS }) => forS)));
  },

  forecast: ({ forecast: { isAsked, isPlaced, fetchedAgoS, failsForS } }) => {
    if (!isAsked) return found('forecast-none');
    if (!isPlaced) return found('forecast-unplaced');
    const last = { lastAgoS: fetchedAgoS };
    if (failsForS === undefined) return fetchedAgoS === undefined ? found('forecast-waited-for') : found(fetchedAgoS > LIMITS.forecastHoldsS ? 'forecast-away' : 'forecast-known', fetchedAgoS, last);
    return found(fetchedAgoS !== undefined && fetchedAgoS <= LIMITS.forecastHoldsS ? 'forecast-ageing' : 'forecast-away', failsForS, last);
  },

  webhook: ({ webhook: { isSet, waiting, oldestAgoS, takenAgoS } }) => {
    if (!isSet) return found('webhook-none');
    if (oldestAgoS === undefined || oldestAgoS < LIMITS.webhookBehindS) return takenAgoS === undefined ? found('webhook-untried') : found('webhook-takes', undefined, { lastAgoS: takenAgoS });
    return found(oldestAgoS < LIMITS.webhookSilentS ? 'webhook-behind' : 'webhook-silent', oldestAgoS, { count: waiting, lastAgoS: takenAgoS });
  },

  backup: ({ backup }) => {
    if (!backup) return found('backup-never');
    return found(backup.agoS > LIMITS.backupOldS ? 'backup-old' : 'backup-taken', undefined, { lastAgoS: backup.agoS });
  },

  redis: ({ redisIsSet, processes }) => {
    if (!redisIsSet) return found('redis-none');
    const lines = processes.filter(isHeard).flatMap(({ redis }) => redis ?? []);
    const away = lines.filter(({ isThere }) => !isThere);
    return away.length > 0 || lines.length === 0 ? found('redis-away', most(away.map(({ forS }) => forS))) : found('redis-answers', most(lines.map(({ forS }) => forS)));
  },

  processes: ({ processes }) => {
    const heard = processes.filter(isHeard);
    const missed = processes.filter((one) => !isHeard(one) && one.agoS <= LIMITS.processMissedS);
    // One that was started after another fell silent has taken its place.
    const replaced = heard.filter(({ runsForS }) => missed.some(({ agoS }) => runsForS <= agoS)).length;
    const count = heard.length;
    const forS = most(heard.map(({ runsForS }) => runsForS));
    if (missed.length > replaced) return found('process-fell-silent', least(missed.map(({ agoS }) => agoS)), { count: missed.length - replaced, of: count + missed.length - replaced });
    const versions = [...new Set(heard.map(({ version }) => version))].sort();
    if (versions.length > 1) return found('versions-differ', least(heard.map(({ runsForS }) => runsForS)), { count, names: versions });
    return found(count > 1 ? 'several-processes' : 'one-process', forS, { count, names: versions });
  },
};
