import { Module } from '@nestjs/common';
import { GatewaysModule } from '../gateways/index.js';
import { LiveModule } from '../live/index.js';
import { ReadingsModule } from '../readings/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { HouseWatch } from './house-watch.js';
import { OwnStanding } from './own-standing.js';
import { StatusController } from './status.controller.js';
import { Status } from './status.service.js';
import { YardFacts } from './yard-facts.js';

@Module({
  imports: [GatewaysModule, LiveModule, ReadingsModule, ShiftsModule, WeatherModule],
  controllers: [StatusController],
  providers: [HouseWatch, OwnStanding, Status, YardFacts],
})
export class StatusModule {}
