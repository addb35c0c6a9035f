import { Injectable } from '@nestjs/common';
import type { DeviceKind } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, later, MINUTE_S, type PersonId, type YardId } from '@stokehold/domain/quantity';
import { randomBytes } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Clock, Ids } from '../platform/index.js';
import { DeviceStore } from './device.store.js';
import { IdentityStore } from './identity.store.js';
import { Pins } from './pins.js';
import { SecretKey } from './secret-key.js';
import { codeAsMeant, codeFrom, newToken, tokenHash } from './tokens.js';

const CODE_LASTS_S = 10 * MINUTE_S;

/** Makes devices, codes, PINs and sessions: for the routes, the first run and the practice night. */
@Injectable()
export class Enrolment {
  constructor(
    private readonly devices: DeviceStore,
    private readonly store: IdentityStore,
    private readonly pins: Pins,
    private readonly key: SecretKey,
    private readonly clock: Clock,
    private readonly ids: Ids,
  ) {}

  /** A new device; its token is told here once and never again. */
  async addDevice(em: EntityManager, device: { yardId: YardId; kind: DeviceKind; name: string }): Promise<{ deviceId: DeviceId; token: string }> {
    const deviceId = this.ids.next<DeviceId>();
    const token = newToken();
    await this.devices.add(em, { ...device, id: deviceId, tokenHash: tokenHash(token), now: this.clock.real() });
    return { deviceId, token };
  }

  /** A code that enrols one device of this kind within ten minutes. */
  async makeCode(em: EntityManager, yardId: YardId, kind: DeviceKind): Promise<{ code: string; expiresAt: EpochS }> {
    const code = codeFrom(randomBytes(8));
    return { code, expiresAt: await this.keepCode(em, yardId, kind, code) };
  }

  /** Keeps a code's hash. The code of a command follows from its key, so that the same key again can tell it again and nobody keeps it. */
  async keepCode(em: EntityManager, yardId: YardId, kind: DeviceKind, code: string): Promise<EpochS> {
    const expiresAt = later(this.clock.real(), CODE_LASTS_S);
    await this.devices.addCode(em, { codeHash: this.codeHash(code), yardId, kind, expiresAt });
    return expiresAt;
  }

  codeOfCommand(yardId: YardId, commandKey: string): string {
    return codeFrom(this.key.mac('device-code', `${yardId} ${commandKey}`));
  }

  takeCode(em: EntityManager, typed: string): Promise<{ yardId: YardId; kind: DeviceKind } | undefined> {
    return this.devices.takeCode(em, this.codeHash(typed), this.clock.real());
  }

  setPin(em: EntityManager, personId: PersonId, pin: string): Promise<void> {
    return this.pins.set(em, personId, pin);
  }

  /** Signs a person in on a device, in place of whoever was; gives the session's token. */
  async beginSession(em: EntityManager, deviceId: DeviceId, personId: PersonId): Promise<string> {
    const token = newToken();
    await this.store.beginSession(em, { tokenHash: tokenHash(token), deviceId, personId, now: this.clock.real() });
    return token;
  }

  /** Everywhere, at once. */
  endSessionsOf(em: EntityManager, personId: PersonId): Promise<void> {
    return this.store.endSessions(em, { personId }, this.clock.real());
  }

  private codeHash(code: string): Buffer {
    return this.key.mac('device-code-hash', codeAsMeant(code));
  }
}
