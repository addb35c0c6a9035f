import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import type { YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Leading } from './leading.js';
import { log } from './log.js';
import { Outbox } from './outbox.js';

/**
 * A process carries what was told to it. When it falls between the one and the other, the process that leads carries that: what
 * waits in a yard at two looks, one after the other, nobody is carrying.
 */
@Injectable()
export class LeftBehind {
  private waited = new Map<YardId, string>();

  constructor(
    private readonly database: DataSource,
    private readonly outbox: Outbox,
    private readonly leading: Leading,
  ) {}

  @Cron('*/2 * * * * *', { waitForCompletion: true })
  async everyTwoSeconds(): Promise<void> {
    if (this.leading.isMine) await this.look().catch((error: unknown) => log.warn({ err: error }, 'what was left behind was not looked for; it is tried again'));
  }

  /** A practice night is carried by the process that plays it, whose clock it goes by. */
  private async look(): Promise<void> {
    const first = (await this.database.query(
      'select yard_id, min(outbox.seq) as seq from outbox join yard on yard.id = yard_id where done_at is null and not practice group by yard_id',
    )) as { yard_id: YardId; seq: string }[];
    for (const { yard_id, seq } of first) if (this.waited.get(yard_id) === seq) this.outbox.poke(yard_id);
    this.waited = new Map(first.map(({ yard_id, seq }) => [yard_id, seq]));
  }
}
