import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { FoodModule } from '../food/index.js';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { YardsModule } from '../yards/index.js';
import { AfterPits } from './after-pits.js';
import { CookingCuts } from './cooking-cuts.js';
import { CookingController } from './cooking.controller.js';
import { CookingReactions } from './cooking.reactions.js';
import { Cooking } from './cooking.service.js';
import { CookingStore } from './cooking.store.js';
import { CooksOnHand } from './cooks-on-hand.js';
import { CutRow } from './cut.row.js';
import { FoodEntryRow } from './food-entry.row.js';
import { FoodLearnedRow } from './food-learned.row.js';
import { FoodLimitsRow } from './food-limits.row.js';
import { HeldAgainst } from './held-against.js';
import { Watch } from './watch.js';

@Module({
  imports: [TypeOrmModule.forFeature([CutRow, FoodEntryRow, FoodLearnedRow, FoodLimitsRow]), FoodModule, PitsModule, ShiftsModule, WeatherModule, YardsModule],
  controllers: [CookingController],
  providers: [AfterPits, Cooking, CookingCuts, CookingReactions, CookingStore, CooksOnHand, HeldAgainst, Watch],
  exports: [Cooking, CookingCuts, CookingReactions, CookingStore, HeldAgainst, Watch],
})
export class CookingModule {}
