import { Injectable } from '@nestjs/common';
import type { DeedName, Done, Me, RouteInput, Routes, SessionView, SignIn, SignInChoices } from '@stokehold/domain/contract';
import { type DeviceId, HOUR_S, later, MINUTE_S } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, holdYard, Ids, refused, RefusalError } from '../platform/index.js';
import { tokensOf } from './cookies.js';
import { Enrolment } from './enrolment.js';
import { type Found, IdentityStore, type PersonWithPin } from './identity.store.js';
import { afterWrongPin, pinStand } from './pin-waits.js';
import { Pins } from './pins.js';
import { tokenHash } from './tokens.js';

/** One shift with a margin; and a phone that lay unused that long asks for the PIN again. */
const SESSION_LASTS_S = 16 * HOUR_S;
const SESSION_IDLES_S = 12 * HOUR_S;
/** How exact `last seen` is: not every request is a write. */
const SEEN_EVERY_S = MINUTE_S;

type Tried = { readonly session: string; readonly person: NonNullable<Actor['person']> } | { readonly refusal: RefusalError };

/** Who asks, and signing in and out. */
@Injectable()
export class Identity {
  constructor(
    private readonly store: IdentityStore,
    private readonly enrolment: Enrolment,
    private readonly pins: Pins,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly database: DataSource,
    private readonly commands: Commands,
  ) {}

  /**
   * The enrolled device of these tokens and, where somebody is signed in on it, that person; undefined for a stranger.
   * Asking leaves no trace, so that an open screen may be asked about again and again: a revoked device or a leaver is
   * found out by the next question.
   */
  async actorOf(cookieHeader: string | undefined, bearer: string | undefined): Promise<Actor | undefined> {
    return (await this.find(cookieHeader, bearer))?.actor;
  }

  /** An enrolled gateway by its id, with the hash of its token: over a broker it signs what it sends. */
  gateway(deviceId: DeviceId): Promise<{ readonly actor: Actor; readonly tokenHash: Buffer } | undefined> {
    return this.store.gateway(deviceId);
  }

  /** As `actorOf`, for a request that somebody made: keeps the session from going idle. */
  async enter(cookieHeader: string | undefined, bearer: string | undefined): Promise<Actor | undefined> {
    const found = await this.find(cookieHeader, bearer);
    if (!found) return undefined;
    const now = this.clock.real();
    const stale = (at: number | null) => at === null || now - at >= SEEN_EVERY_S;
    if (stale(found.deviceSeenAt) || (found.actor.person && stale(found.sessionUsedAt))) {
      const { session } = tokensOf(cookieHeader, bearer);
      await this.store.touch(found.actor.device.id, found.actor.person && session ? tokenHash(session) : undefined, now);
    }
    return found.actor;
  }

  private async find(cookieHeader: string | undefined, bearer: string | undefined): Promise<Found | undefined> {
    const { device, session } = tokensOf(cookieHeader, bearer);
    if (!device) return undefined;
    const now = this.clock.real();
    return this.store.find(tokenHash(device), session ? tokenHash(session) : undefined, {
      began: later(now, -SESSION_LASTS_S),
      used: later(now, -SESSION_IDLES_S),
    });
  }

  /** Whether a kitchen has a manager; practice yards do not count. */
  hasManager(em?: EntityManager): Promise<boolean> {
    return this.store.hasManager(em);
  }

  /** An entry in the audit trail for what has no command key of its own. */
  note(em: EntityManager, actor: Actor, command: DeedName): Promise<void> {
    return this.store.note(em, { actor, personId: actor.person?.id ?? null, command, id: this.ids.next(), now: this.clock.real() });
  }

  async me(actor: Actor): Promise<Me> {
    return { yard: await this.store.yard(actor.yardId), device: actor.device, person: actor.person ?? null };
  }

  async choices(actor: Actor): Promise<SignInChoices> {
    const people = actor.device.kind === 'hand' ? await this.store.people(actor.yardId) : [];
    return { yard: await this.store.yard(actor.yardId), device: actor.device, people };
  }

  /** Signs in; refuses with `pin-wrong`, `pin-wait`, `pin-off`, `person-unknown`, `not-allowed`. A wrong try stays counted. */
  async signIn(actor: Actor, { personId, pin }: SignIn): Promise<{ me: Me; session: string }> {
    if (actor.device.kind !== 'hand') {
      return refused('not-allowed', 'Nobody signs in on this device: it shows or sends, and no more. Use a phone, a tablet or a desk.');
    }
    const tried = await this.tryPin(actor, personId, pin);
    if ('refusal' in tried) throw tried.refusal;
    return { me: await this.me({ ...actor, person: tried.person }), session: tried.session };
  }

  /**
   * A PIN takes long to be held to its hash: nothing of the yard is held meanwhile. So the try is counted as wrong before it is
   * made, and the right one takes that back: tries sent at once cannot outrun their waits.
   */
  private async tryPin(actor: Actor, personId: SignIn['personId'], pin: string): Promise<Tried> {
    const counted = await this.database.transaction((em) => this.countTry(em, actor, personId));
    if ('refusal' in counted) return counted;
    const { pinHash, ...person } = counted;
    const isRight = await this.pins.isRight(pinHash, pin);
    return this.database.transaction(async (em): Promise<Tried> => {
      await this.noteTry(em, actor, personId, isRight ? 'sign-in' : 'sign-in-refused');
      if (!isRight) return { refusal: PIN_WRONG() };
      await this.store.keepWrongPins(em, personId, actor.device.id, { inARow: 0, waitUntil: null });
      return { person, session: await this.enrolment.beginSession(em, actor.device.id, personId) };
    });
  }

  /** The person whose PIN may be tried now, with one more wrong try in a row; a try that is not made leaves an entry too. */
  private async countTry(em: EntityManager, actor: Actor, personId: SignIn['personId']): Promise<PersonWithPin | { readonly refusal: RefusalError }> {
    await holdYard(em, actor.yardId);
    const found = await this.store.personWithPin(em, actor.yardId, personId);
    if (!found) return { refusal: PERSON_UNKNOWN() };
    const now = this.clock.real();
    const wrong = await this.store.holdWrongPins(em, personId, actor.device.id);
    const stand = pinStand(wrong, wrong.everywhere, now);
    if (stand.kind === 'open') {
      await this.store.keepWrongPins(em, personId, actor.device.id, afterWrongPin(wrong, now));
      return found;
    }
    await this.noteTry(em, actor, personId, 'sign-in-not-tried');
    return { refusal: stand.kind === 'off' ? PIN_OFF() : pinWait(stand.seconds) };
  }

  private noteTry(em: EntityManager, actor: Actor, personId: SignIn['personId'], command: DeedName): Promise<void> {
    return this.store.note(em, { actor, personId, command, id: this.ids.next(), now: this.clock.real() });
  }

  /** Who is signed in where: everybody for the manager, oneself for others. */
  sessions({ yardId, person }: Actor): Promise<SessionView[]> {
    const now = this.clock.real();
    return this.store.sessions(yardId, { began: later(now, -SESSION_LASTS_S), used: later(now, -SESSION_IDLES_S) }, person?.role === 'manager' ? undefined : person?.id);
  }

  /** Signs out whoever is signed in on a device; from elsewhere only oneself, or by the manager. */
  async endSession(actor: Actor, command: RouteInput<Routes['endSession']>): Promise<Done> {
    const there = (await this.sessions(actor)).some(({ deviceId }) => deviceId === command.deviceId);
    return this.commands.run(actor, 'end-session', command, async (deed) => {
      if (!there) refused('session-unknown', 'Nobody whom you may sign out is signed in on this device. Open the list again.');
      await holdYard(deed.em, deed.yardId);
      await this.store.endSessions(deed.em, { deviceId: command.deviceId }, this.clock.real());
      return { done: true };
    });
  }

  signOut(actor: Actor): Promise<void> {
    return this.database.transaction(async (em) => {
      if (actor.person) await this.note(em, actor, 'sign-out');
      await this.store.endSessions(em, { deviceId: actor.device.id }, this.clock.real());
    });
  }
}

const PERSON_UNKNOWN = () =>
  new RefusalError({ code: 'person-unknown', detail: 'Nobody by this choice can sign in here. Choose again from the list, or ask the manager for a PIN.' });
const PIN_WRONG = () => new RefusalError({ code: 'pin-wrong', detail: 'This is not right. Try again; after five wrong tries there is a wait.' });
const PIN_OFF = () =>
  new RefusalError({ code: 'pin-off', detail: 'Too many wrong tries: nobody signs in as this person on this device any more. Use another device, or ask the manager for a new PIN or password.' });
const pinWait = (seconds: number) =>
  new RefusalError(
    { code: 'pin-wait', detail: `Too many wrong tries. Wait ${seconds} seconds and try again.`, values: { seconds } },
    { retryAfterS: seconds },
  );
