import { Injectable } from '@nestjs/common';
import type { Device, DeviceCode, Done, EnrolDevice, MakeDeviceCode, Me, RevokeDevice } from '@stokehold/domain/contract';
import { type DeviceId, toIso } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { type Actor, Clock, Commands, holdYard, refused } from '../platform/index.js';
import { DeviceStore } from './device.store.js';
import { Enrolment } from './enrolment.js';
import { Identity } from './identity.service.js';
import { IdentityStore } from './identity.store.js';

/** The devices of a yard: how they come in and how they go. */
@Injectable()
export class Devices {
  constructor(
    private readonly commands: Commands,
    private readonly devices: DeviceStore,
    private readonly store: IdentityStore,
    private readonly enrolment: Enrolment,
    private readonly identity: Identity,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  list(actor: Actor): Promise<Device[]> {
    return this.devices.list(this.database.manager, actor.yardId);
  }

  async makeCode(actor: Actor, command: MakeDeviceCode): Promise<DeviceCode> {
    const code = this.enrolment.codeOfCommand(actor.yardId, command.key);
    const kept = await this.commands.run(actor, 'make-device-code', command, async (deed) => {
      const expiresAt = await this.enrolment.keepCode(deed.em, deed.yardId, command.kind, code);
      return { kind: command.kind, expiresAt: toIso(expiresAt) };
    });
    return { ...kept, code };
  }

  /** Enrols a device; refuses with `code-unknown`. */
  async enrol({ code, name }: EnrolDevice): Promise<{ me: Me; token: string }> {
    const { actor, token } = await this.database.transaction(async (em) => {
      const { yardId, kind } =
        (await this.enrolment.takeCode(em, code)) ??
        refused('code-unknown', 'This code is wrong, used or older than ten minutes. Ask the manager for a new one.');
      const { deviceId, token } = await this.enrolment.addDevice(em, { yardId, kind, name });
      const actor: Actor = { yardId, device: { id: deviceId, kind, name } };
      await this.identity.note(em, actor, 'enrol-device');
      return { actor, token };
    });
    return { me: await this.identity.me(actor), token };
  }

  revoke(actor: Actor, command: RevokeDevice & { deviceId: DeviceId }): Promise<Done> {
    return this.commands.run(actor, 'revoke-device', command, async (deed) => {
      if (command.deviceId === actor.device.id) {
        refused('device-in-hand', 'This is the device in your hand. Revoke it from another one, so that you do not lock yourself out.');
      }
      await holdYard(deed.em, deed.yardId);
      const now = this.clock.real();
      if (!(await this.devices.revoke(deed.em, deed.yardId, command.deviceId, now))) {
        refused('device-not-found', 'This yard has no such device. Open Setup to see which there are.');
      }
      await this.store.endSessions(deed.em, { deviceId: command.deviceId }, now);
      deed.tell({ kind: 'gateway-changed', deviceId: command.deviceId });
      return { done: true };
    });
  }
}
