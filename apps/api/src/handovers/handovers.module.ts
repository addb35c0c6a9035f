import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { AlarmsModule } from '../alarms/index.js';
import { FoodModule } from '../food/index.js';
import { PitsModule } from '../pits/index.js';
import { PlanningModule } from '../planning/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { HandoverRow } from './handover.row.js';
import { HandoversController } from './handovers.controller.js';
import { Handovers, NightSummary } from './handovers.service.js';
import { HandoversStore } from './handovers.store.js';
import { OpenWork } from './open-work.js';

/** Beside shifts/ and not in it: it asks those who ask shifts/. */
@Module({
  imports: [TypeOrmModule.forFeature([HandoverRow]), YardsModule, ShiftsModule, PitsModule, FoodModule, WoodModule, AlarmsModule, PlanningModule],
  controllers: [HandoversController],
  providers: [Handovers, NightSummary, OpenWork, HandoversStore],
  exports: [Handovers],
})
export class HandoversModule {}
