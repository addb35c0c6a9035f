import { Module, type OnApplicationBootstrap } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { TypeOrmModule } from '@nestjs/typeorm';
import { DataFolder } from '../platform/index.js';
import { AccessGuard } from './access.guard.js';
import { DeviceCodeRow } from './device-code.row.js';
import { DeviceRates } from './device-rates.js';
import { DeviceRow } from './device.row.js';
import { DeviceStore } from './device.store.js';
import { DevicesController } from './devices.controller.js';
import { Devices } from './devices.service.js';
import { Enrolment } from './enrolment.js';
import { FirstRunToken } from './first-run-token.js';
import { IdentityController } from './identity.controller.js';
import { Identity } from './identity.service.js';
import { IdentityStore } from './identity.store.js';
import { PinFailureRow } from './pin-failure.row.js';
import { Pins } from './pins.js';
import { RateLimit } from './rate-limit.js';
import { SecretKey } from './secret-key.js';
import { SessionRow } from './session.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([DeviceRow, DeviceCodeRow, SessionRow, PinFailureRow])],
  controllers: [IdentityController, DevicesController],
  providers: [
    { provide: SecretKey, useFactory: (folder: DataFolder) => new SecretKey(folder.path), inject: [DataFolder] },
    { provide: APP_GUARD, useClass: AccessGuard },
    Devices, DeviceRates, DeviceStore, Enrolment, FirstRunToken, Identity, IdentityStore, Pins, RateLimit,
  ],
  exports: [DeviceRates, Enrolment, FirstRunToken, Identity, Pins],
})
export class IdentityModule implements OnApplicationBootstrap {
  constructor(
    private readonly store: IdentityStore,
    private readonly key: SecretKey,
  ) {}

  /** PINs without their key open for nobody; better to say so at the start than to refuse every right PIN. */
  async onApplicationBootstrap(): Promise<void> {
    if (!this.key.exists() && (await this.store.hasAnyPin())) {
      throw new Error(`The database holds PINs, but their key ${this.key.path} is missing. Put it back from the backup of the data folder.`);
    }
  }
}
