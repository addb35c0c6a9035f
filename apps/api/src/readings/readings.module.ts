import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ReadingRow } from './reading.row.js';
import { ReadingsController } from './readings.controller.js';
import { Readings } from './readings.service.js';
import { ReadingsStore } from './readings.store.js';

@Module({
  imports: [TypeOrmModule.forFeature([ReadingRow])],
  controllers: [ReadingsController],
  providers: [Readings, ReadingsStore],
  exports: [Readings],
})
export class ReadingsModule {}
