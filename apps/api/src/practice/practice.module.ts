import { Module } from '@nestjs/common';
import { AlarmsModule } from '../alarms/index.js';
import { ChecksModule } from '../checks/index.js';
import { CookingModule } from '../cooking/index.js';
import { FoodModule } from '../food/index.js';
import { IdentityModule } from '../identity/index.js';
import { PitsModule } from '../pits/index.js';
import { PlanningModule } from '../planning/index.js';
import { ReadingsModule } from '../readings/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { WoodModule } from '../wood/index.js';
import { WoodyardModule } from '../woodyard/index.js';
import { YardsModule } from '../yards/index.js';
import { PracticeDoings } from './doings.js';
import { PracticeYards } from './open-yard.js';
import { PracticeNights } from './practice.service.js';

@Module({
  imports: [AlarmsModule, ChecksModule, CookingModule, FoodModule, IdentityModule, PitsModule, PlanningModule, ReadingsModule, ShiftsModule, WeatherModule, WoodModule, WoodyardModule, YardsModule],
  providers: [PracticeDoings, PracticeYards, PracticeNights],
  exports: [PracticeNights],
})
export class PracticeModule {}
