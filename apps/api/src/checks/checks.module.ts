import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { PitsModule } from '../pits/index.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodModule } from '../wood/index.js';
import { YardsModule } from '../yards/index.js';
import { ChecksController } from './checks.controller.js';
import { ChecksReactions } from './checks.reactions.js';
import { Checks } from './checks.service.js';
import { ChecksStore } from './checks.store.js';
import { FireCheckRow } from './fire-check.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([FireCheckRow]), YardsModule, ShiftsModule, WoodModule, PitsModule],
  controllers: [ChecksController],
  providers: [Checks, ChecksReactions, ChecksStore],
  exports: [Checks, ChecksReactions],
})
export class ChecksModule {}
