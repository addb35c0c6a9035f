import { Injectable } from '@nestjs/common';
import { FINDINGS, type HouseStatus, type PartView } from '@stokehold/domain/contract';
import { type EpochS, later, toIso } from '@stokehold/domain/quantity';
import { VERSION } from '../health/index.js';
import { type Actor, Clock } from '../platform/index.js';
import { judge, type Judged } from './judge.js';
import { YardFacts } from './yard-facts.js';

/** What is wrong with the house, since when, in the time of the yard that asks. */
@Injectable()
export class Status {
  constructor(
    private readonly clock: Clock,
    private readonly facts: YardFacts,
  ) {}

  async view(actor: Actor): Promise<HouseStatus> {
    const parts = judge(await this.facts.of(actor));
    const now = this.clock.now(actor.yardId);
    return { at: toIso(now), version: VERSION, runsSince: toIso(later(now, -Math.round(process.uptime()))), parts: parts.map((part) => shown(part, now)) };
  }
}

function shown({ finding, forS, figures: { lastAgoS, ...figures } }: Judged, now: EpochS): PartView {
  const ago = (seconds: number) => toIso(later(now, -Math.round(seconds)));
  return { ...FINDINGS[finding], finding, since: forS === undefined ? null : ago(forS), figures: { ...figures, ...(lastAgoS !== undefined && { lastAt: ago(lastAgoS) }) } };
}
