import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ShiftsModule } from '../shifts/index.js';
import { YardsModule } from '../yards/index.js';
import { CartWoodRow } from './cart-wood.row.js';
import { LotBurnedRow } from './lot-burned.row.js';
import { LotReadingRow } from './lot-reading.row.js';
import { LotRow } from './lot.row.js';
import { WoodController } from './wood.controller.js';
import { WoodMoveRow } from './wood-move.row.js';
import { OffcutMoveRow } from './offcut-move.row.js';
import { Offcuts } from './offcuts.service.js';
import { OffcutsStore } from './offcuts.store.js';
import { Paces } from './paces.service.js';
import { Wood } from './wood.service.js';
import { WoodStore } from './wood.store.js';
import { WoodViews } from './wood.view.js';

@Module({
  imports: [TypeOrmModule.forFeature([CartWoodRow, LotBurnedRow, LotRow, LotReadingRow, OffcutMoveRow, WoodMoveRow]), YardsModule, ShiftsModule],
  controllers: [WoodController],
  providers: [Offcuts, OffcutsStore, Paces, Wood, WoodStore, WoodViews],
  exports: [Offcuts, Paces, Wood, WoodViews, WoodStore],
})
export class WoodModule {}
