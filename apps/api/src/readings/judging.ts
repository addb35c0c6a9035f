import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, later, type ProbeId, toIso } from '@stokehold/domain/quantity';
import { type Judged, judgeSeries, NEW_SIGNAL, paceAfter, type Quality, type Sample, type Signal } from '@stokehold/domain/reading';
import type { EntityManager } from 'typeorm';
import { ProbeSignalRow } from './probe.rows.js';
import type { Reading } from './sent.js';

export const QUALITIES: readonly Quality[] = ['good', 'suspect', 'bad'];
/** A series that was filled in later is judged anew from so long before: longer than anything is remembered of it. */
const ANEW_FROM_S = 3600;
/** A device's clock is off by less than this: it bounds where its readings are looked for. */
const CLOCKS_APART_S = 86_400;

interface Known {
  readonly probeId: ProbeId;
  readonly signal: Signal;
  readonly lastAt: EpochS;
  readonly paceS: number | undefined;
  readonly quality: number | undefined;
}
interface JudgedProbe {
  readonly row: ProbeSignalRow;
  readonly judged: readonly Judged[];
  readonly turned: boolean;
  /** From here on they are new, and good as they were written. */
  readonly newFrom: EpochS;
}

const sampleOf = ({ takenAt, shownC, fault }: Pick<Reading, 'takenAt' | 'shownC' | 'fault'>): Sample =>
  shownC === undefined ? { at: takenAt, fault: fault ?? 'open' } : { at: takenAt, shownC };

/** Judges readings as they come, from what is kept of each probe's signal; what comes late or shuffled is put in order and judged anew. */
@Injectable()
export class Judging {
  /** Judges readings that were just kept. Says whether a probe turned bad, or is good again. */
  async judge(em: EntityManager, kept: readonly Reading[], now: EpochS): Promise<{ readonly turned: boolean }> {
    const byProbe = new Map<ProbeId, Reading[]>();
    for (const reading of kept) if (reading.takenAt <= later(now, 60)) byProbe.set(reading.probeId, [...(byProbe.get(reading.probeId) ?? []), reading]);
    if (byProbe.size === 0) return { turned: false };
    const known = await this.hold(em, [...byProbe.keys()].sort());
    const judged = await Promise.all([...byProbe].map(([probeId, readings]) => this.judgeProbe(em, probeId, readings, known.get(probeId))));
    await this.mark(em, judged);
    await em.upsert(ProbeSignalRow, judged.map(({ row }) => row), ['probeId']);
    return { turned: judged.some(({ turned }) => turned) };
  }

  private async judgeProbe(em: EntityManager, probeId: ProbeId, readings: Reading[], known: Known | undefined): Promise<JudgedProbe> {
    const sorted = readings.sort((a, b) => a.takenAt - b.takenAt);
    const first = sorted[0]!;
    const inOrder = known === undefined || first.takenAt > known.lastAt;
    const series = inOrder ? sorted : await this.since(em, probeId, later(first.takenAt, -ANEW_FROM_S));
    const { signal, judged } = judgeSeries(series.map(sampleOf), 'chamber', inOrder ? (known?.signal ?? NEW_SIGNAL) : NEW_SIGNAL);
    const last = judged.reduce((latest, one) => (one.at > latest.at ? one : latest));
    const lastReading = series.reduce((latest, one) => (one.takenAt >= latest.takenAt ? one : latest));
    const paceS = inOrder && known ? paceAfter(known.paceS, (last.at - known.lastAt) / sorted.length) : (known?.paceS ?? paceAfter(undefined, (last.at - first.takenAt) / Math.max(1, sorted.length - 1)));
    const quality = QUALITIES.indexOf(last.quality);
    const row = { probeId, signal, lastAt: new Date(last.at * 1000), tempC: lastReading.tempC ?? null, quality, reason: last.reason ?? null, paceS };
    return { row, judged: inOrder ? judged : judged.filter(({ at }) => at >= first.takenAt), newFrom: inOrder ? first.takenAt : later(last.at, 1), turned: (known?.quality === 2) !== (quality === 2) };
  }

  /** What is known of these probes' signals, held until the transaction ends: two batches of one probe are judged one after the other. */
  private async hold(em: EntityManager, ids: readonly ProbeId[]): Promise<ReadonlyMap<ProbeId, Known>> {
    const rows = (await em.query(
      `select probe_id, signal, extract(epoch from last_at)::float8 as last_s, pace_s, quality from probe_signal where probe_id = any($1) order by probe_id for update`,
      [ids],
    )) as { probe_id: ProbeId; signal: Signal; last_s: number; pace_s: number; quality: number }[];
    return new Map(rows.map((row) => [row.probe_id, { probeId: row.probe_id, signal: row.signal, lastAt: epochS(row.last_s), paceS: row.pace_s, quality: row.quality }]));
  }

  private async since(em: EntityManager, probeId: ProbeId, from: EpochS): Promise<Reading[]> {
    const rows = (await em.query(
      `select extract(epoch from taken_at)::float8 as taken_s, shown_c::float8 as shown_c, temp_c, reason from reading
       where probe_id = $1 and taken_at >= $2 and device_taken_at >= $3 and taken_at <= arrived_at + interval '1 minute' order by taken_at, device_taken_at`,
      [probeId, toIso(from), toIso(later(from, -CLOCKS_APART_S))],
    )) as { taken_s: number; shown_c: number | null; temp_c: number | null; reason: string | null }[];
    return rows.map(({ taken_s, shown_c, temp_c, reason }) => ({
      probeId, deviceTakenAt: epochS(taken_s), takenAt: epochS(taken_s), shownC: shown_c ?? undefined, tempC: temp_c ?? undefined, ...(reason === 'short' && { fault: 'short' as const }),
    }));
  }

  /** Writes what is not good beside its reading, and what turned out good after all. Most readings are good from the start. */
  private async mark(em: EntityManager, probes: readonly JudgedProbe[]): Promise<void> {
    const marks = probes.flatMap(({ row, judged, newFrom }) => judged.filter(({ quality, at }) => quality !== 'good' || at < newFrom).map(({ at, quality, reason }) => ({ probeId: row.probeId, at, quality: QUALITIES.indexOf(quality), reason: reason ?? null })));
    const first = marks.reduce<EpochS | undefined>((least, { at }) => (least === undefined || at < least ? at : least), undefined);
    if (first === undefined) return;
    await em.query(
      `update reading set quality = judged.quality, reason = judged.reason
       from unnest($1::uuid[], $2::timestamptz[], $3::smallint[], $4::text[]) as judged (probe_id, at, quality, reason)
       where reading.probe_id = judged.probe_id and reading.taken_at = judged.at and reading.device_taken_at >= $5 and reading.quality <> judged.quality`,
      [marks.map(({ probeId }) => probeId), marks.map(({ at }) => toIso(at)), marks.map(({ quality }) => quality), marks.map(({ reason }) => reason), toIso(later(first, -CLOCKS_APART_S))],
    );
  }
}
