import { type DynamicModule, Module } from '@nestjs/common';
import { AlarmsModule, AlarmsReactions } from './alarms/index.js';
import { ChecksModule, ChecksReactions } from './checks/index.js';
import { DocsModule } from './docs/index.js';
import { FirstRunModule } from './first-run/index.js';
import { FoodModule } from './food/index.js';
import { HandoversModule } from './handovers/index.js';
import { HealthModule } from './health/index.js';
import { IdentityModule } from './identity/index.js';
import { LiveModule } from './live/index.js';
import { MinuteModule } from './minute/index.js';
import { PitsModule, PitsReactions } from './pits/index.js';
import { PlanningModule, PlanningReactions } from './planning/index.js';
import { Outbox, PlatformModule } from './platform/index.js';
import { PracticeModule } from './practice/index.js';
import { reactionsOf } from './reactions.js';
import { ReadingsModule } from './readings/index.js';
import { ServicesModule } from './services/index.js';
import { ShiftsModule } from './shifts/index.js';
import { WeatherModule } from './weather/index.js';
import { WoodModule } from './wood/index.js';
import { YardsModule } from './yards/index.js';

export interface HouseOptions {
  readonly databaseUrl: string;
  readonly workers: number;
  readonly connections?: number;
  /** Where what must not lie in the database lies, such as the key of the PINs. */
  readonly dataFolder: string;
}

/** Every capability of the house. */
const CAPABILITIES = [
  HealthModule, DocsModule, IdentityModule, FirstRunModule, YardsModule, WeatherModule, ShiftsModule, HandoversModule, WoodModule, FoodModule, ServicesModule,
  ReadingsModule, PitsModule, ChecksModule, PlanningModule, AlarmsModule, PracticeModule, MinuteModule, LiveModule,
];

@Module({})
export class AppModule {
  constructor(outbox: Outbox, alarms: AlarmsReactions, pits: PitsReactions, checks: ChecksReactions, planning: PlanningReactions) {
    outbox.react(reactionsOf({ alarms, pits, checks, planning }));
  }

  static on(options: HouseOptions): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(options), ...CAPABILITIES] };
  }
}
