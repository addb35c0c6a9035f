import { type DynamicModule, Module } from '@nestjs/common';
import { ChecksModule, ChecksReactions } from './checks/index.js';
import { HealthModule } from './health/index.js';
import { PitsModule, PitsReactions } from './pits/index.js';
import { PlanningModule, PlanningReactions } from './planning/index.js';
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
const CAPABILITIES = [HealthModule, ReadingsModule, PitsModule, ChecksModule, PlanningModule];

@Module({})
export class AppModule {
  constructor(outbox: Outbox, pits: PitsReactions, checks: ChecksReactions, planning: PlanningReactions) {
    outbox.react(reactionsOf({ pits, checks, planning }));
  }

  static on(options: HouseOptions): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(options), ...CAPABILITIES] };
  }
}
