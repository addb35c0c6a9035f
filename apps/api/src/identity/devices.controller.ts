import { Controller } from '@nestjs/common';
import { type Device, type DeviceCode, type Done, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Devices } from './devices.service.js';

@Controller()
export class DevicesController {
  constructor(private readonly devices: Devices) {}

  @Answers(routes.devices)
  list(@By() actor: Actor): Promise<Device[]> {
    return this.devices.list(actor);
  }

  @Answers(routes.makeDeviceCode)
  makeCode(@Input() input: RouteInput<Routes['makeDeviceCode']>, @By() actor: Actor): Promise<DeviceCode> {
    return this.devices.makeCode(actor, input);
  }

  @Answers(routes.revokeDevice)
  revoke(@Input() input: RouteInput<Routes['revokeDevice']>, @By() actor: Actor): Promise<Done> {
    return this.devices.revoke(actor, input);
  }
}
