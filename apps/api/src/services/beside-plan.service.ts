import { Injectable } from '@nestjs/common';
import { gustsSeen } from '@stokehold/domain/chamber';
import type { ServiceCost } from '@stokehold/domain/contract';
import type { PitId, YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { WeatherNow } from '../weather/index.js';
import { WoodStore } from '../wood/index.js';
import { WoodyardStore } from '../woodyard/index.js';
import { Yards } from '../yards/index.js';
import { againstPull, type PitOfNight } from './against-pull.js';
import type { Books } from './cost-books.js';
import type { ServiceNight } from './night-sheet.js';
import { paidIn } from './pay-of-night.js';

interface SheetOfNight {
  readonly sheet: ServiceCost;
  readonly night: ServiceNight;
  readonly books: Books;
}

/** What a service cost beside what was planned before its night went its own way. */
@Injectable()
export class BesidePlan {
  constructor(
    private readonly woodyard: WoodyardStore,
    private readonly wood: WoodStore,
    private readonly weather: WeatherNow,
    private readonly yards: Yards,
  ) {}

  async of(em: EntityManager, yardId: YardId, { sheet, night, books }: SheetOfNight): Promise<ServiceCost['against']> {
    const shift = night.shifts.at(-1);
    const plan = shift && (await this.woodyard.firstPull(em, shift.id));
    if (!shift || !plan) return null;
    const { span } = night;
    const pits = await this.pitsOf(em, yardId, sheet, night, books);
    const isOwn = ({ pitId }: { readonly pitId: PitId }) => pits.some(({ id }) => id === pitId);
    const plannedPeople = shift.people.map((person) => ({ ...person, wasAway: [], presence: 'here' as const, breaks: person.breaks.map(({ beganAt: _began, endedAt: _ended, ...rest }) => rest) }));
    const begin = Math.min(...plan.loads.map(({ from }) => from));
    const burnedS = shift.pits.filter(isOwn).reduce((sum, { lightAt }) => sum + Math.max(0, Math.min(shift.until, span.until) - Math.max(lightAt, span.from, begin)), 0);
    const burned = (await this.wood.burnedOneByOne(em, yardId, span)).filter(isOwn);
    return againstPull(plan, { pits, burned, burnedS, until: span.until, lots: books.lots }, {
      splits: sheet.cooks.reduce((sum, { splits }) => sum + splits, 0), woodCents: sheet.woodCents, crewCents: sheet.crewCents, paid: night.paid,
      plannedPaid: paidIn([{ ...shift, people: plannedPeople }], span, { ...books.pay, nights: books.pay.nights.touching(span) }),
    });
  }

  /** The pits on which the cooks of a service lay, with the gusts on each. */
  private async pitsOf(em: EntityManager, yardId: YardId, { cooks }: ServiceCost, { span }: ServiceNight, { lays }: Books): Promise<readonly PitOfNight[]> {
    const own = new Set(cooks.map(({ cook }) => cook.id));
    const lain = new Set(lays.touching(span).filter(({ cookId }) => own.has(cookId)).map(({ pitId }) => pitId));
    const told = await this.weather.toldIn(em, yardId, span);
    return (await this.yards.pits(em, yardId)).filter(({ id }) => lain.has(id)).map((pit) => ({ id: pit.id, name: pit.name, gusts: gustsSeen(told, { ...span, fireEndHeadingDeg: pit.fireEndHeadingDeg }) }));
  }
}
