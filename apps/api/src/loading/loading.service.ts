import { Injectable } from '@nestjs/common';
import type { CookSupposed, LoadingView, MoveWeighed, SupposeCook, WeighMove } from '@stokehold/domain/contract';
import { fromIso, type YardId } from '@stokehold/domain/quantity';
import { whatIfCooks } from '@stokehold/scheduling/cook-plan';
import type { LoadingFacts, LoadingPlanned } from '@stokehold/scheduling/loading';
import { moveByHand } from '@stokehold/scheduling/placement';
import { DataSource } from 'typeorm';
import { type Actor, Clock, log, refused, Workers } from '../platform/index.js';
import { LoadingGathering } from './loading.facts.js';
import { loadingView, moveView, supposedView } from './loading.view.js';

interface Made {
  readonly facts: LoadingFacts;
  readonly planned: LoadingPlanned;
}

/** What should lie where, and which cook goes on when. Nothing of it is stored: it follows from the yard as it stands. */
@Injectable()
export class Loading {
  /** The last plan of each yard, by what it was made from: asked again, it is not made again. */
  private readonly kept = new Map<YardId, { readonly from: string; readonly made: Promise<Made> }>();

  constructor(
    private readonly gathering: LoadingGathering,
    private readonly workers: Workers,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  async view({ yardId }: Actor): Promise<LoadingView> {
    const { planned, facts } = await this.made(yardId);
    return loadingView(planned, facts);
  }

  async weigh({ yardId }: Actor, move: WeighMove): Promise<MoveWeighed> {
    const { planned } = await this.made(yardId);
    const pit = planned.pits.find(({ pitId }) => pitId === move.pitId);
    if (!pit) return refused('pit-unknown', 'This pit does not stand in this yard, or its loading cannot be planned.');
    if (!pit.problem.groups.some(({ id }) => id === move.cookId)) return refused('cook-unknown', 'This cook is not on this pit, nor planned for it.');
    const zone = (number: number | null) => (number === null ? {} : { number });
    const [from, to] = [zone(move.fromZone), zone(move.toZone)];
    return moveView(moveByHand(pit.problem, pit.plan.placings, {
      cookId: move.cookId, pieces: move.pieces, ...(from.number !== undefined && { fromZoneId: `${from.number}` }), ...(to.number !== undefined && { toZoneId: `${to.number}` }),
    }));
  }

  async suppose({ yardId }: Actor, { cookId, onAt }: SupposeCook): Promise<CookSupposed> {
    const { cooks } = (await this.made(yardId)).planned;
    if (!cooks || !cooks.plan.starts.some((one) => one.cookId === cookId)) return refused('cook-unknown', 'This cook is not in the cook plan. Give it a service that is still to come.');
    return supposedView(whatIfCooks(cooks.problem, cooks.plan.starts, { what: 'cook', cookId, onAt: fromIso(onAt) }));
  }

  private async made(yardId: YardId): Promise<Made> {
    const facts = await this.gathering.facts(this.database.manager, yardId, this.clock.now(yardId));
    const from = JSON.stringify(facts);
    const before = this.kept.get(yardId);
    if (before?.from === from) return before.made;
    const made = this.plan(facts);
    this.kept.set(yardId, { from, made });
    made.catch(() => this.kept.delete(yardId));
    return made;
  }

  private async plan(facts: LoadingFacts): Promise<Made> {
    const planned = await this.workers.runPatiently('planLoading', facts);
    if (planned.faults.length > 0) log.error({ faults: planned.faults.slice(0, 20) }, 'a loading or cook plan failed its check and is not shown');
    return { facts, planned };
  }
}
