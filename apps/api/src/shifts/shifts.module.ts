import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { YardsModule } from '../yards/index.js';
import { AbsenceRow } from './absence.row.js';
import { CrewBreakRow } from './crew-break.row.js';
import { ShiftPersonRow } from './shift-person.row.js';
import { ShiftPitRow } from './shift-pit.row.js';
import { ShiftRow } from './shift.row.js';
import { ShiftStore } from './shift.store.js';
import { ShiftsController } from './shifts.controller.js';
import { Shifts } from './shifts.service.js';
import { TaskRow } from './task.row.js';
import { TaskStore } from './task.store.js';
import { Tasks } from './tasks.service.js';

@Module({
  imports: [TypeOrmModule.forFeature([ShiftRow, ShiftPersonRow, AbsenceRow, CrewBreakRow, ShiftPitRow, TaskRow]), YardsModule],
  controllers: [ShiftsController],
  providers: [Shifts, Tasks, ShiftStore, TaskStore],
  exports: [Shifts, Tasks],
})
export class ShiftsModule {}
