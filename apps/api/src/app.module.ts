import { type DynamicModule, Module } from '@nestjs/common';
import { AlarmsModule, AlarmsReactions } from './alarms/index.js';
import { ChecksModule, ChecksReactions } from './checks/index.js';
import { CookingModule, CookingReactions } from './cooking/index.js';
import { DocsModule } from './docs/index.js';
import { FirstRunModule } from './first-run/index.js';
import { FoodModule } from './food/index.js';
import { GatewaysModule } from './gateways/index.js';
import { HandoversModule } from './handovers/index.js';
import { HealthModule } from './health/index.js';
import { IdentityModule } from './identity/index.js';
import { LinksModule } from './links/index.js';
import { LiveModule } from './live/index.js';
import { LoadingModule } from './loading/index.js';
import { MinuteModule } from './minute/index.js';
import { PitsModule, PitsReactions } from './pits/index.js';
import { PlanningModule, PlanningReactions } from './planning/index.js';
import { Outbox, PlatformModule } from './platform/index.js';
import { PracticeModule } from './practice/index.js';
import { reactionsOf } from './reactions.js';
import { ReadingsModule } from './readings/index.js';
import { RecordsModule } from './records/index.js';
import { ServicesModule } from './services/index.js';
import { ShiftsModule } from './shifts/index.js';
import { StatusModule } from './status/index.js';
import { WeatherModule } from './weather/index.js';
import { WoodModule } from './wood/index.js';
import { WoodyardModule, WoodyardReactions } from './woodyard/index.js';
import { YardsModule } from './yards/index.js';

export interface HouseOptions {
  readonly databaseUrl: string;
  readonly workers: number;
  readonly connections?: number;
  /** Where what must not lie in the database lies, such as the key of the PINs. */
  readonly dataFolder: string;
  /** The database lies in it too, and not on a server of its own. */
  readonly databaseInside?: boolean;
}

/** Every capability of the house. */
const CAPABILITIES = [
  HealthModule, DocsModule, IdentityModule, FirstRunModule, YardsModule, WeatherModule, ShiftsModule, HandoversModule, WoodModule, WoodyardModule, FoodModule, ServicesModule,
  ReadingsModule, PitsModule, ChecksModule, PlanningModule, CookingModule, LoadingModule, AlarmsModule, GatewaysModule, LinksModule, PracticeModule, RecordsModule, MinuteModule, LiveModule, StatusModule,
];

@Module({})
export class AppModule {
  constructor(outbox: Outbox, alarms: AlarmsReactions, pits: PitsReactions, checks: ChecksReactions, cooking: CookingReactions, planning: PlanningReactions, woodyard: WoodyardReactions) {
    outbox.react(reactionsOf({ alarms, pits, checks, cooking, planning, woodyard }));
  }

  static on(options: HouseOptions): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(options), ...CAPABILITIES] };
  }
}
