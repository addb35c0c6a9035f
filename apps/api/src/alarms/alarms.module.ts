import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { AlarmRow } from './alarm.row.js';
import { AlarmStore } from './alarm.store.js';
import { AlarmsController } from './alarms.controller.js';
import { AlarmsReactions } from './alarms.reactions.js';
import { Alarms } from './alarms.service.js';

@Module({
  imports: [TypeOrmModule.forFeature([AlarmRow]), PitsModule, ShiftsModule, WoodModule],
  controllers: [AlarmsController],
  providers: [Alarms, AlarmsReactions, AlarmStore],
  exports: [Alarms, AlarmsReactions],
})
export class AlarmsModule {}
