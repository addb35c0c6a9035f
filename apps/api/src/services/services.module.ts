import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { FoodModule } from '../food/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { WoodModule } from '../wood/index.js';
import { WoodyardModule } from '../woodyard/index.js';
import { YardsModule } from '../yards/index.js';
import { BesidePlan } from './beside-plan.service.js';
import { CostBooks } from './cost-books.js';
import { CookPriceRow } from './cook-price.row.js';
import { PayRulesRow } from './pay-rules.row.js';
import { ServicesController } from './services.controller.js';
import { Services } from './services.service.js';
import { ServicesStore } from './services.store.js';

@Module({
  imports: [TypeOrmModule.forFeature([PayRulesRow, CookPriceRow]), FoodModule, WoodModule, WoodyardModule, ShiftsModule, WeatherModule, YardsModule],
  controllers: [ServicesController],
  providers: [BesidePlan, CostBooks, Services, ServicesStore],
  exports: [Services],
})
export class ServicesModule {}
