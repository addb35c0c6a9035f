import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { GatewaysModule } from '../gateways/index.js';
import { PitsModule } from '../pits/index.js';
import { PlanningModule } from '../planning/index.js';
import { ReadingsModule } from '../readings/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WeatherModule } from '../weather/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { AlarmCallRow } from './alarm-call.row.js';
import { AlarmRow } from './alarm.row.js';
import { AlarmStore } from './alarm.store.js';
import { AlarmsController } from './alarms.controller.js';
import { AlarmsReactions } from './alarms.reactions.js';
import { Alarms } from './alarms.service.js';
import { Calling } from './calling.js';
import { NightSeen } from './night-seen.js';

@Module({
  imports: [TypeOrmModule.forFeature([AlarmRow, AlarmCallRow]), GatewaysModule, PitsModule, PlanningModule, ReadingsModule, ShiftsModule, WeatherModule, WoodModule, YardsModule],
  controllers: [AlarmsController],
  providers: [Alarms, AlarmsReactions, AlarmStore, Calling, NightSeen],
  exports: [Alarms, AlarmsReactions],
})
export class AlarmsModule {}
