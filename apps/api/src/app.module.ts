import { type DynamicModule, Module } from '@nestjs/common';
import { HealthModule } from './health/index.js';
import { Outbox, PlatformModule } from './platform/index.js';
import { ReadingsModule } from './readings/index.js';
import { reactionsOf } from './reactions.js';

export interface HouseOptions {
  readonly databaseUrl: string;
  readonly workers: number;
  readonly connections?: number;
  /** Where what must not lie in the database lies, such as the key of the PINs. */
  readonly dataFolder: string;
}

/** Every capability of the house. */
const CAPABILITIES = [HealthModule, ReadingsModule];

@Module({})
export class AppModule {
  constructor(outbox: Outbox) {
    outbox.react(reactionsOf());
  }

  static on(options: HouseOptions): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(options), ...CAPABILITIES] };
  }
}
