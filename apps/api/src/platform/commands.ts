import { Injectable } from '@nestjs/common';
import type { DeedName } from '@stokehold/domain/contract';
import { toIso } from '@stokehold/domain/quantity';
import { canonicalJson } from '@stokehold/domain/record';
import { createHash } from 'node:crypto';
import type { Actor } from './actor.js';
import { Disk } from './disk.js';
import { Outbox } from './outbox.js';
import { DISK_FULL, refused } from './refusals.js';
import { type Deed, Deeds } from './transaction.js';

/** The body as the record keeps it: everything but secrets. */
const withoutSecrets = (body: object) => Object.fromEntries(Object.entries(body).map(([name, value]) => [name, name === 'pin' ? '(kept secret)' : value]));

/** The one way in for everything that changes something: once per key, fact and record and outbox in one transaction. */
@Injectable()
export class Commands {
  constructor(
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
    private readonly disk: Disk,
  ) {}

  /**
   * Runs `work` unless its key was seen before; the same key again brings the first answer.
   * The reply must be plain JSON. Refuses with `key-reused` when the same key comes with another body, with `disk-full` what is new while there is no room.
   */
  async run<R extends object>(actor: Actor, name: DeedName, command: { readonly key: string }, work: (deed: Deed) => Promise<R>): Promise<R> {
    const reply = await this.deeds.run(actor.yardId, async (deed) => {
      const first = await this.takeKey(deed, actor, name, command);
      if (first) return first as R;
      if (this.disk.isOut) refused('disk-full', DISK_FULL);
      const answer = await work(deed);
      deed.record({ personId: actor.person?.id ?? null, deviceId: actor.device.id, command: name, key: command.key, body: withoutSecrets(command) });
      const answered = deed.em.query('update command_key set reply = $3::jsonb where yard_id = $1 and key = $2', [actor.yardId, command.key, JSON.stringify(answer)]);
      await Promise.all([answered, deed.writeOutbox()]);
      return answer;
    });
    this.outbox.poke(actor.yardId);
    return reply;
  }

  /** Takes the key for this command, or gives the answer it had before. A command under way with the same key is waited for. */
  private async takeKey(deed: Deed, actor: Actor, name: DeedName, command: { readonly key: string }): Promise<object | undefined> {
    const { sentAt: _sentAt, ...body } = command as { sentAt?: string };
    const hash = createHash('sha256').update(`${name} ${canonicalJson(body)}`).digest();
    const taken = (await deed.em.query(
      'insert into command_key (yard_id, key, command, body_hash, at) values ($1, $2, $3, $4, $5) on conflict do nothing returning key',
      [actor.yardId, command.key, name, hash, toIso(deed.now)],
    )) as unknown[];
    if (taken.length > 0) return undefined;
    const [before] = (await deed.em.query('select body_hash, reply from command_key where yard_id = $1 and key = $2', [actor.yardId, command.key])) as [
      { body_hash: Buffer; reply: object },
    ];
    if (!before.body_hash.equals(hash)) {
      refused('key-reused', 'This key was used for another command. Give every command a key of its own.');
    }
    return before.reply;
  }
}
