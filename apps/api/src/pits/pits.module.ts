import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { FoodModule } from '../food/index.js';
import { ReadingsModule } from '../readings/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { FireEstimateRow } from './fire-estimate.row.js';
import { FireLookRow } from './fire-look.row.js';
import { FirePagesController } from './fire-pages.controller.js';
import { FirePages } from './fire-pages.service.js';
import { FireToldRow } from './fire-told.row.js';
import { Fires } from './fires.service.js';
import { FireKeeper } from './keeper.js';
import { LearnedSetBackRow } from './learned-set-back.row.js';
import { PitFireRow } from './pit-fire.row.js';
import { PitsReactions } from './pits.reactions.js';
import { PitsStore } from './pits.store.js';
import { ToldStore } from './told.store.js';
import { Tonight } from './tonight.js';

@Module({
  imports: [TypeOrmModule.forFeature([PitFireRow, FireLookRow, FireEstimateRow, FireToldRow, LearnedSetBackRow]), YardsModule, ShiftsModule, WeatherModule, FoodModule, WoodModule, ReadingsModule],
  controllers: [FirePagesController],
  providers: [Fires, FireKeeper, FirePages, PitsReactions, PitsStore, ToldStore, Tonight],
  exports: [FirePages, Fires, PitsReactions],
})
export class PitsModule {}
