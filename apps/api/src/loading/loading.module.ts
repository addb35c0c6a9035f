import { Module } from '@nestjs/common';
import { CookingModule } from '../cooking/index.js';
import { FoodModule } from '../food/index.js';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { LoadingController } from './loading.controller.js';
import { LoadingGathering } from './loading.facts.js';
import { Loading } from './loading.service.js';

@Module({
  imports: [CookingModule, FoodModule, PitsModule, ShiftsModule, WoodModule, YardsModule],
  controllers: [LoadingController],
  providers: [Loading, LoadingGathering],
})
export class LoadingModule {}
