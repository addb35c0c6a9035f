import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ChecksModule } from '../checks/index.js';
import { FoodModule } from '../food/index.js';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { YardsModule } from '../yards/index.js';
import { AssignmentRow } from './assignment.row.js';
import { SearchBudget } from './budget.js';
import { Fairness } from './fairness.service.js';
import { Improver } from './improver.js';
import { NightGathering } from './night-facts.js';
import { Nights } from './night-now.js';
import { PinRow } from './pin.row.js';
import { PinStore } from './pin.store.js';
import { Pins } from './pins.service.js';
import { PlanAnswers } from './plan-answers.service.js';
import { PlanRow } from './plan.row.js';
import { Roster } from './roster.service.js';
import { PlanStore } from './plan.store.js';
import { Planner } from './planner.js';
import { PlanningController } from './planning.controller.js';
import { PlanningReactions } from './planning.reactions.js';
import { Plans } from './plans.service.js';

@Module({
  imports: [TypeOrmModule.forFeature([PlanRow, AssignmentRow, PinRow]), YardsModule, ShiftsModule, PitsModule, ChecksModule, FoodModule],
  controllers: [PlanningController],
  providers: [Plans, Planner, PlanningReactions, PlanStore, NightGathering, SearchBudget, Improver, Fairness, Roster, Nights, PinStore, Pins, PlanAnswers],
  exports: [Plans, PlanningReactions, SearchBudget, Improver],
})
export class PlanningModule {}
