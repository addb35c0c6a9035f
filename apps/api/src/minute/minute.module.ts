import { Module } from '@nestjs/common';
import { ScheduleModule } from '@nestjs/schedule';
import { ShiftsModule } from '../shifts/index.js';
import { HeldClock } from './held-clock.js';
import { Minute } from './minute.service.js';

@Module({ imports: [ScheduleModule.forRoot(), ShiftsModule], providers: [HeldClock, Minute], exports: [Minute] })
export class MinuteModule {}
