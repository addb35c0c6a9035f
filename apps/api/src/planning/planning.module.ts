import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ChecksModule } from '../checks/index.js';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { YardsModule } from '../yards/index.js';
import { AssignmentRow } from './assignment.row.js';
import { NightGathering } from './night-facts.js';
import { PlanRow } from './plan.row.js';
import { PlanStore } from './plan.store.js';
import { Planner } from './planner.js';
import { PlanningReactions } from './planning.reactions.js';
import { Plans } from './plans.service.js';

@Module({
  imports: [TypeOrmModule.forFeature([PlanRow, AssignmentRow]), YardsModule, ShiftsModule, PitsModule, ChecksModule],
  providers: [Plans, Planner, PlanningReactions, PlanStore, NightGathering],
  exports: [Plans, PlanningReactions],
})
export class PlanningModule {}
