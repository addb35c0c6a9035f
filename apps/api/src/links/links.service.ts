import { Injectable } from '@nestjs/common';
import type { RouteInput, Routes, WebhookSaved, WebhookView } from '@stokehold/domain/contract';
import { randomBytes } from 'node:crypto';
import { DataSource } from 'typeorm';
import { type Actor, Commands } from '../platform/index.js';
import { WebhookRow } from './link.rows.js';

/** Where a yard tells its alarms and due checks to. */
@Injectable()
export class Links {
  constructor(
    private readonly commands: Commands,
    private readonly database: DataSource,
  ) {}

  async view({ yardId }: Actor): Promise<WebhookView> {
    return { url: (await this.database.manager.findOne(WebhookRow, { where: { yardId } }))?.url ?? null };
  }

  /** A new address with a secret of its own, shown once; null tells nobody any more. */
  save(actor: Actor, command: RouteInput<Routes['saveWebhook']>): Promise<WebhookSaved> {
    return this.commands.run<WebhookSaved>(actor, 'save-webhook', command, async (deed) => {
      if (command.url === null) {
        await deed.em.delete(WebhookRow, { yardId: deed.yardId });
        return { secret: null };
      }
      const secret = randomBytes(32).toString('base64url');
      await deed.em.upsert(WebhookRow, { yardId: deed.yardId, url: command.url, secret }, ['yardId']);
      return { secret };
    });
  }
}
