import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { CookingModule } from '../cooking/index.js';
import { FoodModule } from '../food/index.js';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { NightWoods } from './night-wood.service.js';
import { Pulls } from './pulls.service.js';
import { WoodPullRow } from './wood-pull.row.js';
import { WoodyardController } from './woodyard.controller.js';
import { WoodyardReactions } from './woodyard.reactions.js';
import { WoodyardStore } from './woodyard.store.js';
import { WoodyardViews } from './woodyard.view.js';
import { YardClimateRow } from './yard-climate.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([YardClimateRow, WoodPullRow]), WoodModule, YardsModule, ShiftsModule, PitsModule, FoodModule, CookingModule],
  controllers: [WoodyardController],
  providers: [WoodyardStore, NightWoods, Pulls, WoodyardViews, WoodyardReactions],
  exports: [Pulls, WoodyardReactions, WoodyardStore],
})
export class WoodyardModule {}
