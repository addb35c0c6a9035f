import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ShiftsModule } from '../shifts/index.js';
import { YardsModule } from '../yards/index.js';
import { LotReadingRow } from './lot-reading.row.js';
import { LotRow } from './lot.row.js';
import { WoodController } from './wood.controller.js';
import { WoodMoveRow } from './wood-move.row.js';
import { Wood } from './wood.service.js';
import { WoodStore } from './wood.store.js';
import { WoodViews } from './wood.view.js';

@Module({
  imports: [TypeOrmModule.forFeature([LotRow, LotReadingRow, WoodMoveRow]), YardsModule, ShiftsModule],
  controllers: [WoodController],
  providers: [Wood, WoodStore, WoodViews],
  exports: [Wood, WoodViews, WoodStore],
})
export class WoodModule {}
