import { Injectable } from '@nestjs/common';
import type { ChamberSample } from '@stokehold/domain/alarm';
import type { ProbeCourses, ReadingsPasted, ReadingsRecorded, RecordReadings, RouteInput, Routes } from '@stokehold/domain/contract';
import { RUNS_AWAY_LEAST_K } from '@stokehold/domain/fire';
import { type EpochS, fromIso, later, type PitId, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import { isBelieved } from '@stokehold/domain/reading';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { AsideStore } from './aside.store.js';
import { Judging } from './judging.js';
import { parsePasted } from './pasted.js';
import { Probes } from './probes.service.js';
import { type Probe, ReadingsStore, type ZoneMean } from './readings.store.js';
import { LOOKS_BACK_S, pitsRunningAway } from './running-away.js';
import { STRETCH_S } from './thinning.js';
import { asideBecause, type Reading, readingOf, type Timed, timed } from './sent.js';

const DAY_S = 86_400;
/** The last readings of a chamber that band alarms look at. */
const LAST_READINGS = 12;

/** A chamber by those of its probes that are believed. */
export interface ChamberLately {
  readonly pitId: PitId;
  readonly probes: readonly { readonly zone: number; readonly samples: readonly ChamberSample[] }[];
  /** Standard deviation of one sample of all of them together, K. */
  readonly noiseK: number;
}

/** Probe readings: kept once, judged, and handed out as means. */
@Injectable()
export class Readings {
  constructor(
    private readonly commands: Commands,
    private readonly store: ReadingsStore,
    private readonly aside: AsideStore,
    private readonly judging: Judging,
    private readonly probes: Probes,
    private readonly database: DataSource,
  ) {}

  /** Keeps a batch; what was sent before is counted and not kept again. What is of no known probe, or of no possible time, is kept aside. */
  record(actor: Actor, command: RecordReadings): Promise<ReadingsRecorded> {
    return this.commands.run(actor, 'record-readings', command, (deed) => this.takeIn(deed, actor, timed(command, deed)));
  }

  /** The same from a table of text. Lines that are no reading are named; the others are kept. Refuses with `not-a-table`. */
  paste(actor: Actor, command: RouteInput<Routes['pasteReadings']>): Promise<ReadingsPasted> {
    const table = parsePasted(command.text);
    if (!table.ok) return refused('not-a-table', 'This is no table of readings. Its first line must name probe, time and temp_c or temp_f; each line after it is one reading.');
    const { readings, wrong } = table.value;
    return this.commands.run(actor, 'paste-readings', command, async (deed) => ({ ...(await this.takeIn(deed, actor, timed({ readings: [...readings] }, { now: deed.now, aheadS: 0 }))), wrong: [...wrong] }));
  }

  /** Gives the readings of an unknown name to a probe, and all that come under it from now on. Refuses with `probe-unknown` and `source-taken`. */
  assign(actor: Actor, command: RouteInput<Routes['assignSource']>): Promise<ReadingsRecorded> {
    return this.commands.run(actor, 'assign-source', command, async (deed) => {
      const { source, probeId } = command;
      const [probe] = await this.store.probes(deed.em, deed.yardId, [probeId]);
      if (!probe || probe.removed) return refused('probe-unknown', 'This yard has no such probe. Add it to its pit first.');
      const known = await this.aside.probeOf(deed.em, deed.yardId, source);
      if (known && known !== probeId) return refused('source-taken', `${source} is the name of another probe already. Take that probe off first.`, { source });
      await this.aside.name(deed.em, deed.yardId, source, probeId);
      return this.takeIn(deed, actor, await this.aside.take(deed.em, deed.yardId, source));
    });
  }

  /** Readings of a pit that said they were taken after they arrived: kept, and used for nothing. */
  fromTheFuture(em: EntityManager, pitId: PitId, span: { readonly from: EpochS; readonly until: EpochS }): Promise<{ readonly at: EpochS; readonly zone: number }[]> {
    return this.store.fromTheFuture(em, pitId, span);
  }

  /** What the probes showed per pit, in stretches of `stretchS` after `from` up to `until`; a pit without readings is absent. */
  async means(em: EntityManager, yardId: YardId, span: { from: EpochS; until: EpochS; stretchS: number }): Promise<ReadonlyMap<PitId, readonly ZoneMean[]>> {
    const means = await this.store.means(em, yardId, span);
    return new Map([...new Set(means.map(({ pitId }) => pitId))].map((pitId) => [pitId, means.filter((mean) => mean.pitId === pitId)]));
  }

  /** What each chamber showed lately, by its probes that are believed. */
  async chambers(em: EntityManager, yardId: YardId, now: EpochS): Promise<ChamberLately[]> {
    const [lately, standings] = await Promise.all([this.store.lastOfEach(em, yardId, now, LAST_READINGS), this.probes.standings(em, yardId, now)]);
    const believed = lately.filter(({ probeId }) => standings.some((standing) => standing.id === probeId && isBelieved(standing)));
    return [...new Set(believed.map(({ pitId }) => pitId))].map((pitId) => {
      const own = believed.filter((probe) => probe.pitId === pitId);
      return { pitId, probes: own.map(({ zone, samples }) => ({ zone, samples })), noiseK: Math.sqrt(own.reduce((sum, { noiseK }) => sum + noiseK ** 2, 0)) / own.length };
    });
  }

  /** What every probe showed in the day that begins then, also long after its readings were let go. */
  async courses({ yardId }: Pick<Actor, 'yardId'>, { from }: RouteInput<Routes['probeCourses']>): Promise<ProbeCourses> {
    const courses = await this.store.courses(this.database.manager, yardId, { from: fromIso(from), until: later(fromIso(from), DAY_S) });
    return { stretchS: STRETCH_S, courses: courses.map(({ probeId, until, meanC, leastC, mostC }) => ({ probeId, until: until.map(toIso), meanC: [...meanC], leastC: [...leastC], mostC: [...mostC] })) };
  }

  /** When readings of a probe were first doubted, and first called bad, in a stretch of time. */
  doubted(em: EntityManager, probeId: ProbeId, span: { readonly from: EpochS; readonly until: EpochS }): Promise<{ readonly suspectAt: EpochS | undefined; readonly badAt: EpochS | undefined }> {
    return this.store.doubted(em, probeId, span);
  }

  private async takeIn(deed: Deed, actor: Actor, sent: readonly Timed[]): Promise<ReadingsRecorded> {
    const { em, yardId, now } = deed;
    const probes = new Map((await this.store.probes(em, yardId, [...new Set(sent.map(({ source }) => source))])).map((probe) => [probe.source, probe]));
    const sorted = sent.map((one) => ({ ...one, why: asideBecause(one, probes.get(one.source)?.id, now) }));
    const aside = sorted.flatMap(({ why, ...one }) => (why ? [{ ...one, why }] : []));
    await this.aside.add(em, yardId, actor.device.id, aside, now);
    const readings = await this.corrected(em, sorted.filter(({ why }) => !why), probes);
    const kept = await this.store.add(em, readings, now);
    if (kept.length > 0) await this.tell(deed, kept, [...probes.values()]);
    return { kept: kept.length, repeated: readings.length - kept.length, aside: aside.length };
  }

  private async corrected(em: EntityManager, sent: readonly Timed[], probes: ReadonlyMap<string, Probe>): Promise<Reading[]> {
    const ids = [...new Set(sent.map(({ source }) => probes.get(source)!.id))];
    const calibrations = new Map<ProbeId, { from: EpochS; against: { shownC: number; trueC: number }[] }[]>();
    for (const { probeId, from, against } of await this.store.calibrations(em, ids)) calibrations.set(probeId, [...(calibrations.get(probeId) ?? []), { from, against: [...against] }]);
    return sent.map((one) => {
      const { id } = probes.get(one.source)!;
      return readingOf(one, id, calibrations.get(id) ?? []);
    });
  }

  private async tell(deed: Deed, kept: readonly Reading[], probes: readonly Probe[]): Promise<void> {
    const { turned } = await this.judging.judge(deed.em, kept, deed.now);
    const mine = probes.filter(({ id }) => kept.some(({ probeId }) => probeId === id));
    const lately = await this.store.changing(deed.em, mine.map(({ id }) => id), { now: deed.now, backS: LOOKS_BACK_S, changedK: RUNS_AWAY_LEAST_K });
    const runningAway = pitsRunningAway(mine, lately, deed.now);
    deed.tell({
      kind: 'readings-recorded', pitIds: [...new Set(mine.map(({ pitId }) => pitId))], ...(runningAway.length > 0 && { runningAway }), ...(turned && { probesTurned: true }),
    });
  }
}

