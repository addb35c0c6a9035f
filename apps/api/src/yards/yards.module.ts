import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { IdentityModule } from '../identity/index.js';
import { CrewMemberRow } from './crew-member.row.js';
import { Crew } from './crew.service.js';
import { CrewStore } from './crew.store.js';
import { PitRow } from './pit.row.js';
import { PitStore } from './pit.store.js';
import { ProbeRow } from './probe.row.js';
import { SkillRow } from './skill.row.js';
import { YardRow } from './yard.row.js';
import { YardStore } from './yard.store.js';
import { YardsController } from './yards.controller.js';
import { Yards } from './yards.service.js';
import { ZoneRow } from './zone.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([YardRow, PitRow, ZoneRow, ProbeRow, CrewMemberRow, SkillRow]), IdentityModule],
  controllers: [YardsController],
  providers: [Yards, Crew, YardStore, PitStore, CrewStore],
  exports: [Yards, Crew],
})
export class YardsModule {}
