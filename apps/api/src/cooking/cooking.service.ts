import { Injectable } from '@nestjs/common';
import type { CookCourse, CookWhatIf, CutSettings, Done, FoodLimits, RecordFood, RouteInput, Routes, SaveCut, SaveFoodLimits } from '@stokehold/domain/contract';
import { checkedCut, type Change, withOwn } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, toIso, type YardId } from '@stokehold/domain/quantity';
import { deviceTime } from '@stokehold/domain/shift';
import { DataSource } from 'typeorm';
import { FoodStore } from '../food/index.js';
import { type Actor, Clock, Commands, type Deed, Ids, refused, Workers } from '../platform/index.js';
import { WeatherNow } from '../weather/index.js';
import { CookingStore } from './cooking.store.js';
import { CooksOnHand } from './cooks-on-hand.js';
import { cutOf, cutsWith, editionOf, ownOf } from './cut-of.js';
import { FoodEntryRow } from './food-entry.row.js';
import { logShown } from './log-lines.js';
import { findingsFor, findingShown } from './outcome.js';

const dateOf = (at: EpochS) => new Date(toIso(at));

/** Cuts, limits and the log of food, and each cook's course. */
@Injectable()
export class Cooking {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
    private readonly store: CookingStore,
    private readonly hand: CooksOnHand,
    private readonly food: FoodStore,
    private readonly weather: WeatherNow,
    private readonly workers: Workers,
    private readonly ids: Ids,
  ) {}

  async cuts(actor: Actor): Promise<CutSettings[]> {
    return cutsWith(await this.store.cuts(this.database.manager, actor.yardId));
  }

  /** Refuses what the model cannot reckon with, naming the field and its range. */
  saveCut(actor: Actor, command: SaveCut): Promise<Done> {
    return this.commands.run(actor, 'save-cut', command, async (deed) => {
      const checked = checkedCut(cutOf(command.cut));
      if (!checked.ok) refuseCut(checked.refusal);
      await this.store.saveCut(deed.em, deed.yardId, command.cut, deed.now);
      return { done: true };
    });
  }

  limits(actor: Actor): Promise<FoodLimits> {
    return this.store.limits(this.database.manager, actor.yardId);
  }

  /** Own values may only ask more than the code does. */
  saveLimits(actor: Actor, command: SaveFoodLimits): Promise<Done> {
    return this.commands.run(actor, 'save-food-limits', command, async (deed) => {
      const stricter = withOwn(editionOf(command.limits), ownOf(command.limits));
      if (!stricter.ok) {
        const { section, printed, field, value } = stricter.refusal;
        refused('laxer-than-code', `${field} asks less than ${section} of the chosen code: ${printed}. Own values may only be stricter.`, { section, printed, field, value });
      }
      await this.store.saveLimits(deed.em, deed.yardId, command.limits, deed.now);
      deed.tell({ kind: 'food-recorded', cookIds: [] });
      return { done: true };
    });
  }

  /** Lines of the log: nothing that was sent is thrown away; a gateway sends readings only. */
  record(actor: Actor, command: RecordFood): Promise<{ kept: number }> {
    return this.commands.run(actor, 'record-food', command, async (deed) => {
      const byProbe = actor.device.kind === 'gateway';
      if (byProbe && command.entries.some(({ kind }) => kind !== 'reading')) refused('not-allowed', 'A gateway sends readings only. Record this on a device on which somebody signs in.');
      const cookIds = [...new Set(command.entries.map(({ cookId }) => cookId))].sort();
      await this.requireKnown(deed, cookIds, command.entries.flatMap(({ corrects }) => (corrects ? [corrects] : [])));
      const sentAt = command.sentAt === undefined ? {} : { sentAt: fromIso(command.sentAt) };
      const rows = command.entries.map((entry): FoodEntryRow => {
        const deviceAt = fromIso(entry.at);
        return {
          id: this.ids.next(), yardId: deed.yardId, cookId: entry.cookId, kind: entry.kind, deviceAt: dateOf(deviceAt), recordedAt: dateOf(deed.now),
          at: dateOf(Math.min(deed.now, deviceTime({ deviceAt, ...sentAt, arrivedAt: deed.now, aheadS: deed.aheadS }).at) as EpochS),
          stage: entry.kind === 'reading' ? entry.stage : null, tempC: entry.kind === 'reading' ? entry.tempC : null, wrappedIn: entry.kind === 'wrapped' ? entry.in : null,
          action: entry.kind === 'action' ? entry.action : null, limitName: entry.kind === 'action' ? entry.limit : null, note: entry.note ?? null, corrects: entry.corrects ?? null,
          crewMemberId: actor.person?.id ?? null, deviceId: actor.device.id, byProbe,
        };
      });
      await this.store.add(deed.em, rows);
      deed.tell({ kind: 'food-recorded', cookIds });
      return { kept: rows.length };
    });
  }

  /** One cook, reckoned anew: the forecast in full, the log with what became of each reading, and each limit. */
  async course(actor: Actor, { cookId }: RouteInput<Routes['cookCourse']>): Promise<CookCourse> {
    const { one, now } = await this.one(actor.yardId, cookId);
    const limits = await this.store.limits(this.database.manager, actor.yardId);
    const [made] = one.asked ? await this.workers.run('forecastCooks', { cooks: [{ cook: one.asked }], now }) : [];
    const short = made?.done.ok ? made.done.value : undefined;
    const { cook, cut, log, asked } = one;
    return {
      cook, cut: cut ?? null, log: logShown(log, asked, short?.verdicts ?? []), findings: findingsFor(one, limits, short, now).map(findingShown),
      core: short ? { from: toIso(short.core.from), stepS: short.core.stepS, p10: [...short.core.p10], p50: [...short.core.p50], p90: [...short.core.p90] } : null,
    };
  }

  /** What a change would do; nothing is kept. */
  async whatIf(actor: Actor, { cookId, change }: RouteInput<Routes['cookWhatIf']>): Promise<CookWhatIf> {
    const { one, now } = await this.one(actor.yardId, cookId);
    if (!one.asked || one.cook.offAt !== null) return refused('cook-not-on', 'This cook lies on no pit, or its cut is not known. Place it and choose a cut of the list.');
    const { ambientTempC } = await this.weather.at(this.database.manager, actor.yardId, now);
    const answer = await this.workers.run('cookWhatIf', { cook: one.asked, now, change: changeOf(change, ambientTempC) });
    if (!answer.ok) return answer.refusal.code === 'already-wrapped' ? refused('already-wrapped', 'This cook is wrapped already.') : refused('cook-not-on', 'This cook cannot be forecast. Correct its weight or its cut.');
    const { middleS, lateS, p50At, p95At } = answer.value;
    return { middleS: middleS ?? null, lateS: lateS ?? null, p50At: p50At === undefined ? null : toIso(p50At), p95At: p95At === undefined ? null : toIso(p95At) };
  }

  private async one(yardId: YardId, id: CookId) {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const [cook] = await this.food.cooks(em, { id, yardId });
    if (!cook) return refused('cook-unknown', 'There is no such cook. Open the night to see what is planned.');
    const [one] = await this.hand.of(em, yardId, now, [cook]);
    return { one: one!, now };
  }

  private async requireKnown(deed: Deed, cookIds: readonly CookId[], corrected: readonly string[]): Promise<void> {
    for (const id of cookIds) {
      const [cook] = await this.food.cooks(deed.em, { id, yardId: deed.yardId });
      if (!cook) refused('cook-unknown', 'There is no such cook. Open the night to see what is planned.');
    }
    const log = corrected.length === 0 ? [] : await this.store.log(deed.em, cookIds);
    const missing = corrected.find((id) => !log.some((line) => line.id === id));
    if (missing) refused('food-entry-unknown', 'The line to correct is not in the log of this cook.', { entryId: missing });
  }
}

const changeOf = (change: RouteInput<Routes['cookWhatIf']>['change'], outsideC: number): Change => {
  if (change.what === 'no-wrap') return change;
  const at = fromIso(change.at);
  return change.what === 'opened' ? { ...change, at, outsideC } : { ...change, at };
};

function refuseCut(refusal: Extract<ReturnType<typeof checkedCut>, { ok: false }>['refusal']): never {
  switch (refusal.code) {
    case 'cut-value-out-of-range':
      return refused('cut-not-valid', `${refusal.field} is ${refusal.value}; it has to lie from ${refusal.min} to ${refusal.max}.`, { field: refusal.field, value: refusal.value, min: refusal.min, max: refusal.max });
    case 'done-rule-missing':
      return refused('cut-not-valid', 'Give a core temperature, a tenderness, or both.', { field: 'done', value: '' });
    case 'wrap-after-done':
      return refused('cut-not-valid', `The wrap at ${refusal.wrapC} °C comes after done at ${refusal.doneC} °C.`, { field: 'wrap.atCoreC', value: refusal.wrapC });
    case 'composition-not-whole':
      return refused('cut-not-valid', `Water, protein, fat and ash make ${refusal.sumFrac.toFixed(2)} of the cut; they have to make about 1.`, { field: 'composition', value: Number(refusal.sumFrac.toFixed(3)) });
  }
}
