import { Module } from '@nestjs/common';
import { FoodModule } from '../food/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { ServicesController } from './services.controller.js';
import { Services } from './services.service.js';

@Module({
  imports: [FoodModule, WoodModule, ShiftsModule, YardsModule],
  controllers: [ServicesController],
  providers: [Services],
  exports: [Services],
})
export class ServicesModule {}
