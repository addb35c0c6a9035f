import { Injectable } from '@nestjs/common';
import type { FirstRun, Me } from '@stokehold/domain/contract';
import { cents, type PersonId, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Enrolment, FirstRunToken, Identity } from '../identity/index.js';
import { type Actor, Deeds, Ids, Outbox, refused } from '../platform/index.js';
import { Crew, Yards } from '../yards/index.js';

/** Only one first run at a time, in all processes. */
const LOCK = 'stokehold first run';

/** The first run: yard, manager and device out of nothing but the token in the server's window. */
@Injectable()
export class FirstRuns {
  constructor(
    private readonly token: FirstRunToken,
    private readonly identity: Identity,
    private readonly enrolment: Enrolment,
    private readonly yards: Yards,
    private readonly crew: Crew,
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
    private readonly ids: Ids,
  ) {}

  /** Refuses with `first-run-done` or `first-run-token-wrong`. */
  async run(asked: FirstRun): Promise<{ me: Me; device: string; session: string }> {
    const yardId = this.ids.next<YardId>();
    const made = await this.deeds.run(yardId, async (deed) => {
      await this.requireFirst(deed.em, asked.token);
      await this.yards.create(deed.em, { id: yardId, settings: asked.yard, practice: false });
      const { name, language, pin } = asked.manager;
      const person = { id: this.ids.next<PersonId>(), name, language, role: 'manager' } as const;
      await this.crew.keep(deed, { ...person, skills: [], rateCentsPerHour: cents(0), left: false }, pin);
      const { deviceId, token: device } = await this.enrolment.addDevice(deed.em, { yardId, kind: 'hand', name: asked.deviceName });
      const actor: Actor = { yardId, device: { id: deviceId, kind: 'hand', name: asked.deviceName }, person };
      const session = await this.enrolment.beginSession(deed.em, deviceId, person.id);
      await this.identity.note(deed.em, actor, 'first-run');
      deed.tell({ kind: 'yard-set-up' });
      return { actor, device, session };
    });
    this.token.spend();
    this.outbox.poke(yardId);
    return { me: await this.identity.me(made.actor), device: made.device, session: made.session };
  }

  private async requireFirst(em: EntityManager, token: string): Promise<void> {
    await em.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [LOCK]);
    if (await this.identity.hasManager(em)) refused('first-run-done', 'This house has a manager already. Ask for a code and enrol this device.');
    if (!this.token.isRight(token)) refused('first-run-token-wrong', 'This is not the token of the first run. Copy it from the window in which the server was started last.');
  }
}
