import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { CookingModule } from '../cooking/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { YardsModule } from '../yards/index.js';
import { RecordCorrectionRow } from './record-correction.row.js';
import { RecordsController } from './records.controller.js';
import { Records } from './records.service.js';
import { RecordsStore } from './records.store.js';

@Module({
  imports: [TypeOrmModule.forFeature([RecordCorrectionRow]), CookingModule, ShiftsModule, YardsModule],
  controllers: [RecordsController],
  providers: [Records, RecordsStore],
})
export class RecordsModule {}
