import { Module } from '@nestjs/common';
import { AlarmsModule } from '../alarms/index.js';
import { ChecksModule } from '../checks/index.js';
import { FoodModule } from '../food/index.js';
import { IdentityModule } from '../identity/index.js';
import { PitsModule } from '../pits/index.js';
import { PlanningModule } from '../planning/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { LiveGateway } from './live.gateway.js';
import { StateController } from './state.controller.js';
import { StateOf } from './state-of.service.js';

@Module({
  imports: [AlarmsModule, ChecksModule, FoodModule, IdentityModule, PitsModule, PlanningModule, ShiftsModule, WeatherModule, WoodModule, YardsModule],
  controllers: [StateController],
  providers: [StateOf, LiveGateway],
  exports: [StateOf, LiveGateway],
})
export class LiveModule {}
