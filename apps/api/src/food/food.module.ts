import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { YardsModule } from '../yards/index.js';
import { CookRow } from './cook.row.js';
import { FoodController } from './food.controller.js';
import { Food } from './food.service.js';
import { FoodStore } from './food.store.js';
import { PlacementRow } from './placement.row.js';
import { ServiceRow } from './service.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([CookRow, PlacementRow, ServiceRow]), YardsModule],
  controllers: [FoodController],
  providers: [Food, FoodStore],
  exports: [Food, FoodStore],
})
export class FoodModule {}
