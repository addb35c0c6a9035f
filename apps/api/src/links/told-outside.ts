import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, later, toIso, type YardId } from '@stokehold/domain/quantity';
import { createHmac } from 'node:crypto';
import { DataSource } from 'typeorm';
import { Broker } from '../gateways/index.js';
import { Fires } from '../pits/index.js';
import { Clock, Leading, log, Outbox } from '../platform/index.js';

/** What was not taken within a day helps nobody any more. */
const HELPS_S = 86_400;
const ANSWER_WITHIN_MS = 5000;
const MOST_AT_ONCE = 50;
const LOCK = `hashtext('tell the outside')`;

interface Message {
  readonly yardId: YardId;
  readonly ref: string;
  readonly kind: 'alarm' | 'due-check';
  readonly body: object;
  readonly webhookAt: Date | null;
  readonly brokerAt: Date | null;
  readonly url: string | null;
  readonly secret: string | null;
}

/**
 * Tells alarms and due checks to the outside: to the webhook of the yard and to the broker, each as often as it takes and at least
 * once. A message is written before it is sent, so that none is lost when the house or the other end falls.
 */
@Injectable()
export class ToldOutside implements OnApplicationBootstrap {
  /** A yard is opened for practice or not, and stays so. */
  private readonly practice = new Map<YardId, boolean>();

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly outbox: Outbox,
    private readonly fires: Fires,
    private readonly broker: Broker,
    private readonly leading: Leading,
  ) {}

  onApplicationBootstrap(): void {
    this.outbox.listen(async (yardId, _, { kind }) => {
      if ((kind !== 'alarm-changed' && kind !== 'minute-passed') || (await this.isPractice(yardId))) return;
      if (kind === 'minute-passed') return this.noteDueChecks(yardId);
      await this.noteAlarms(yardId);
      void this.send().catch((error: unknown) => log.error({ err: error }, 'alarms could not be told to the outside; it is tried again'));
    });
  }

  @Cron('*/20 * * * * *', { waitForCompletion: true })
  async again(): Promise<void> {
    if (!this.leading.isMine) return;
    await this.send().catch((error: unknown) => log.error({ err: error }, 'messages could not be told to the outside; it is tried again'));
  }

  /** Practice stays inside. */
  private async isPractice(yardId: YardId): Promise<boolean> {
    const known = this.practice.get(yardId);
    if (known !== undefined) return known;
    const [yard] = (await this.database.query('select practice from yard where id = $1', [yardId])) as { readonly practice: boolean }[];
    if (yard) this.practice.set(yardId, yard.practice);
    return yard?.practice !== false;
  }

  /** Every call of an alarm that is not written yet. */
  async noteAlarms(yardId: YardId): Promise<void> {
    await this.database.query(
      `insert into link_message (yard_id, ref, kind, at, body)
       select call.yard_id, call.id::text, 'alarm', call.at, jsonb_build_object('kind', 'alarm', 'id', call.id, 'at', call.at, 'alarm', alarm.kind, 'pit', pit.name,
         'raisedAt', alarm.raised_at, 'people', (select coalesce(jsonb_agg(name order by name), '[]') from crew_member where id = any(call.people)))
       from alarm_call as call join alarm on alarm.id = call.alarm_id left join pit on pit.id = alarm.pit_id
       where call.yard_id = $1 and call.at > $2 on conflict do nothing`,
      [yardId, toIso(later(this.clock.now(yardId), -HELPS_S))],
    );
  }

  /** Checks that are due, once each: a due time that moves by minutes is still the same check, the one after the last look. */
  async noteDueChecks(yardId: YardId): Promise<void> {
    const now = this.clock.now(yardId);
    const due = (await this.fires.dues(this.database.manager, yardId)).filter(({ dueAt }) => dueAt <= now);
    for (const { pitId, dueAt, latestSafeAt, lastLookAt } of due) {
      await this.database.query(
        `insert into link_message (yard_id, ref, kind, at, body)
         select $1, $2, 'due-check', $3, jsonb_build_object('kind', 'due-check', 'id', $2::text, 'at', $3::timestamptz, 'pit', pit.name, 'dueAt', $4::text, 'latestSafeAt', $5::text)
         from pit where pit.id = $6 on conflict do nothing`,
        [yardId, `${pitId} ${lastLookAt}`, toIso(now), toIso(dueAt), toIso(latestSafeAt), pitId],
      );
    }
  }

  /** Sends what waits, the oldest first; one process at a time, whichever has something new to tell. */
  async send(): Promise<void> {
    const line = this.database.createQueryRunner();
    try {
      const [{ mine }] = (await line.query(`select pg_try_advisory_lock(${LOCK}) as mine`)) as [{ mine: boolean }];
      if (mine) await this.sendWaiting().finally(() => line.query(`select pg_advisory_unlock(${LOCK})`));
    } finally {
      await line.release();
    }
  }

  private async sendWaiting(): Promise<void> {
    const waiting = (await this.database.query(
      `select link_message.yard_id as "yardId", ref, kind, body, webhook_at as "webhookAt", broker_at as "brokerAt", url, secret
       from link_message left join webhook on webhook.yard_id = link_message.yard_id
       where at > $1 and ((webhook_at is null and url is not null) or (broker_at is null and $2::boolean)) order by at, ref limit $3`,
      [toIso(later(this.clock.real(), -HELPS_S)), this.broker.isThere, MOST_AT_ONCE],
    )) as Message[];
    for (const message of waiting) await this.sendOne(message, this.clock.real());
  }

  private async sendOne(message: Message, now: EpochS): Promise<void> {
    const mark = (column: 'webhook_at' | 'broker_at') => this.database.query(`update link_message set ${column} = $3 where yard_id = $1 and ref = $2`, [message.yardId, message.ref, toIso(now)]);
    const text = JSON.stringify(message.body);
    if (!message.webhookAt && message.url && message.secret && (await post(message.url, message.secret, text))) await mark('webhook_at');
    const topic = `stokehold/${message.yardId}/${message.kind === 'alarm' ? 'alarms' : 'due-checks'}`;
    if (!message.brokerAt && this.broker.isThere && (await this.broker.publish(topic, text))) await mark('broker_at');
  }
}

/** Signed like a gateway's message: HMAC-SHA256 in hex. Whether it was taken; a redirect is not followed. */
async function post(url: string, secret: string, text: string): Promise<boolean> {
  const signature = createHmac('sha256', secret).update(text).digest('hex');
  try {
    const answer = await fetch(url, {
      method: 'POST', body: text, redirect: 'manual', signal: AbortSignal.timeout(ANSWER_WITHIN_MS), headers: { 'content-type': 'application/json', 'x-stokehold-signature': signature },
    });
    await answer.body?.cancel();
    if (!answer.ok) log.warn({ status: answer.status }, 'the webhook did not take a message; it is sent again');
    return answer.ok;
  } catch (error) {
    log.warn({ err: (error as Error).message }, 'the webhook does not answer; it is asked again');
    return false;
  }
}
