import type { Skill } from '@stokehold/domain/contract';
import { Entity, PrimaryColumn } from 'typeorm';

@Entity('skill')
export class SkillRow {
  @PrimaryColumn('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @PrimaryColumn('text') skill: Skill;
}
