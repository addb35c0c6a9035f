import { Injectable } from '@nestjs/common';
import type { CookForecast, CutSettings, FoodEntryView, FoodLimits } from '@stokehold/domain/contract';
import { type Effects, nothingLearned } from '@stokehold/domain/food';
import { type CookId, type EpochS, epochS, type PersonId, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, In, MoreThan } from 'typeorm';
import { CutRow } from './cut.row.js';
import { USUAL_LIMITS } from './cut-of.js';
import { FoodEntryRow } from './food-entry.row.js';
import { FoodLearnedRow } from './food-learned.row.js';
import { FoodLimitsRow } from './food-limits.row.js';
import { standing } from './log-lines.js';

const dateOf = (at: EpochS) => new Date(toIso(at));

/** A line of the log as it is kept. */
export interface KeptEntry extends Omit<FoodEntryView, 'at' | 'corrected' | 'verdict'> {
  readonly at: EpochS;
}

/** Where a cook lay. */
export interface LayAt {
  readonly cookId: CookId;
  readonly pitId: PitId;
  readonly zone: number;
}

/** Where most of a cook lay for a stretch of time; the last one has no end while it lies there. */
export interface Stretch extends LayAt {
  readonly from: EpochS;
  readonly until?: EpochS;
}

@Injectable()
export class CookingStore {
  async cuts(em: EntityManager, yardId: YardId): Promise<CutSettings[]> {
    return (await em.find(CutRow, { where: { yardId }, order: { code: 'asc' } })).map(({ settings }) => settings);
  }

  async saveCut(em: EntityManager, yardId: YardId, settings: CutSettings, at: EpochS): Promise<void> {
    await em.upsert(CutRow, { yardId, code: settings.code, settings, changedAt: dateOf(at) }, ['yardId', 'code']);
  }

  async limits(em: EntityManager, yardId: YardId): Promise<FoodLimits> {
    return (await em.findOneBy(FoodLimitsRow, { yardId }))?.limits ?? USUAL_LIMITS;
  }

  async saveLimits(em: EntityManager, yardId: YardId, limits: FoodLimits, at: EpochS): Promise<void> {
    await em.upsert(FoodLimitsRow, { yardId, limits, changedAt: dateOf(at) }, ['yardId']);
  }

  async add(em: EntityManager, rows: readonly FoodEntryRow[]): Promise<void> {
    await em.insert(FoodEntryRow, [...rows]);
  }

  /** The log of these cooks, oldest first; what a later line corrects is among it. */
  async log(em: EntityManager, cookIds: readonly CookId[]): Promise<KeptEntry[]> {
    if (cookIds.length === 0) return [];
    const rows = await em.find(FoodEntryRow, { where: { cookId: In([...cookIds]) }, order: { at: 'asc', recordedAt: 'asc', id: 'asc' } });
    return rows.map((row) => ({
      id: row.id, cookId: row.cookId as CookId, kind: row.kind, at: epochS(row.at.getTime() / 1000), stage: row.stage, tempC: row.tempC, wrappedIn: row.wrappedIn, action: row.action,
      limit: row.limitName, note: row.note, personId: row.crewMemberId as PersonId | null, byProbe: row.byProbe, corrects: row.corrects,
    }));
  }

  /** When each of these cooks was wrapped, by the lines of its log that stand. */
  async wrappedAt(em: EntityManager, cookIds: readonly CookId[]): Promise<ReadonlyMap<CookId, EpochS>> {
    return new Map(standing(await this.log(em, cookIds)).filter(({ kind }) => kind === 'wrapped').map(({ cookId, at }) => [cookId, at]));
  }

  /** Cooks that have lines of the log since a time. */
  async cooksLogged(em: EntityManager, yardId: YardId, since: EpochS): Promise<CookId[]> {
    const rows = await em.find(FoodEntryRow, { select: { cookId: true }, where: { yardId, at: MoreThan(dateOf(since)) } });
    return [...new Set(rows.map(({ cookId }) => cookId as CookId))].sort();
  }

  async learned(em: EntityManager, yardId: YardId): Promise<(kind: 'cut' | 'pit', ref: string) => Effects> {
    const rows = await em.find(FoodLearnedRow, { where: { yardId } });
    return (kind, ref) => rows.find((row) => row.kind === kind && row.ref === ref)?.effects ?? nothingLearned();
  }

  async saveLearned(em: EntityManager, yardId: YardId, kind: 'cut' | 'pit', ref: string, effects: Effects): Promise<void> {
    await em.upsert(FoodLearnedRow, { yardId, kind, ref, effects }, ['yardId', 'kind', 'ref']);
  }

  /** Keeps what was forecast, of every cook in one statement. */
  async saveForecasts(em: EntityManager, forecasts: readonly { readonly cookId: CookId; readonly forecast: CookForecast }[]): Promise<void> {
    if (forecasts.length === 0) return;
    await em.query(`update cook set forecast = said.forecast from jsonb_to_recordset($1::jsonb) as said (cook_id uuid, forecast jsonb) where cook.id = said.cook_id`, [
      JSON.stringify(forecasts.map(({ cookId, forecast }) => ({ cook_id: cookId, forecast }))),
    ]);
  }

  /** Finished cooks that have not taught yet, with the pit most of each lay in. */
  async untaught(em: EntityManager, yardId: YardId, since: EpochS): Promise<LayAt[]> {
    const rows = (await em.query('select id from cook where yard_id = $1 and not taught and off_at is not null and off_at > $2', [yardId, toIso(since)])) as { id: CookId }[];
    return this.lastPlaces(em, rows.map(({ id }) => id));
  }

  /** Where each of these cooks lay longest; one that lay nowhere is left out. */
  async lastPlaces(em: EntityManager, cookIds: readonly CookId[]): Promise<LayAt[]> {
    return (await em.query(
      `select distinct on (cook_id) cook_id as "cookId", pit_id as "pitId", zone_nth as zone
       from placement where cook_id = any($1) order by cook_id, until_at - from_at desc nulls first, pit_id, zone_nth`,
      [[...cookIds]],
    )) as LayAt[];
  }

  /** Where most of each cook lay, in order of time. */
  async stretches(em: EntityManager, cookIds: readonly CookId[]): Promise<Stretch[]> {
    const rows = (await em.query(
      `select distinct on (cook_id, from_at) cook_id as "cookId", pit_id as "pitId", zone_nth as zone, extract(epoch from from_at)::float8 as "fromS", extract(epoch from until_at)::float8 as "untilS"
       from placement where cook_id = any($1) order by cook_id, from_at, pieces desc, zone_nth, pit_id`,
      [[...cookIds]],
    )) as (LayAt & { fromS: number; untilS: number | null })[];
    return rows.map(({ fromS, untilS, ...lay }) => ({ ...lay, from: epochS(fromS), ...(untilS !== null && { until: epochS(untilS) }) }));
  }

  async markTaught(em: EntityManager, cookIds: readonly CookId[]): Promise<void> {
    if (cookIds.length > 0) await em.query('update cook set taught = true where id = any($1)', [[...cookIds]]);
  }
}
