import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { WeatherModule } from '../weather/index.js';
import { AsideStore } from './aside.store.js';
import { Judging } from './judging.js';
import { ProbeCalibrationRow, ProbeSignalRow, ProbeSourceRow } from './probe.rows.js';
import { Probes } from './probes.service.js';
import { ReadingAsideRow } from './reading-aside.row.js';
import { ReadingThinRow, ThinnedRow } from './reading-thin.row.js';
import { ReadingRow } from './reading.row.js';
import { ReadingsController } from './readings.controller.js';
import { Readings } from './readings.service.js';
import { ReadingsStore } from './readings.store.js';
import { Thinning } from './thinning.js';

@Module({
  imports: [TypeOrmModule.forFeature([ReadingRow, ProbeSignalRow, ProbeCalibrationRow, ProbeSourceRow, ReadingAsideRow, ReadingThinRow, ThinnedRow]), WeatherModule],
  controllers: [ReadingsController],
  providers: [Readings, Probes, ReadingsStore, AsideStore, Judging, Thinning],
  exports: [Readings, Probes, Thinning],
})
export class ReadingsModule {}
