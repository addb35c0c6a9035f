import { Injectable } from '@nestjs/common';
import type { CrewMember } from '@stokehold/domain/contract';
import type { PersonId, YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { CrewMemberRow } from './crew-member.row.js';
import { SkillRow } from './skill.row.js';

export type KeptCrewMember = CrewMember & { readonly hasPin: boolean };

@Injectable()
export class CrewStore {
  private readonly remembered = new Remembered<KeptCrewMember[]>(['crew-set-up']);

  /** By name; those who have left are among them. */
  crew(em: EntityManager, yardId: YardId): Promise<KeptCrewMember[]> {
    return this.remembered.once(em, yardId, () => em.query(
      `select id, name, role, language, rate_cents_per_hour as "rateCentsPerHour", has_left as "left", pin_hash is not null as "hasPin",
         array(select skill from skill where crew_member_id = crew_member.id order by skill) as skills
       from crew_member where yard_id = $1 order by lower(name), id`,
      [yardId],
    ));
  }

  async yardOf(em: EntityManager, id: PersonId): Promise<YardId | undefined> {
    return (await em.findOne(CrewMemberRow, { where: { id }, select: { id: true, yardId: true } }))?.yardId as YardId | undefined;
  }

  async save(em: EntityManager, yardId: YardId, person: CrewMember): Promise<void> {
    const { skills, left, ...settings } = person;
    this.remembered.forget(em);
    await em.upsert(CrewMemberRow, { ...settings, yardId, hasLeft: left }, ['id']);
    await em.delete(SkillRow, { crewMemberId: person.id });
    const each = [...new Set(skills)];
    if (each.length > 0) await em.insert(SkillRow, each.map((skill) => ({ crewMemberId: person.id, skill })));
  }
}
