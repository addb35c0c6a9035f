import { Injectable } from '@nestjs/common';
import type { CrewMember } from '@stokehold/domain/contract';
import type { PersonId, YardId } from '@stokehold/domain/quantity';
import { cents } from '@stokehold/domain/quantity';
import { type EntityManager, In } from 'typeorm';
import { CrewMemberRow } from './crew-member.row.js';
import { SkillRow } from './skill.row.js';

export type KeptCrewMember = CrewMember & { readonly hasPin: boolean };

@Injectable()
export class CrewStore {
  /** By name; those who have left are among them. */
  async crew(em: EntityManager, yardId: YardId): Promise<KeptCrewMember[]> {
    const rows = await em.createQueryBuilder(CrewMemberRow, 'person').where({ yardId }).orderBy('lower(person.name)').addOrderBy('person.id').getMany();
    const skills = await em.find(SkillRow, { where: { crewMemberId: In(rows.map(({ id }) => id)) }, order: { skill: 'ASC' } });
    return rows.map((row) => ({
      id: row.id as PersonId,
      name: row.name,
      role: row.role,
      language: row.language,
      skills: skills.filter(({ crewMemberId }) => crewMemberId === row.id).map(({ skill }) => skill),
      rateCentsPerHour: cents(row.rateCentsPerHour),
      left: row.hasLeft,
      hasPin: row.pinHash !== null,
    }));
  }

  async yardOf(em: EntityManager, id: PersonId): Promise<YardId | undefined> {
    return (await em.findOne(CrewMemberRow, { where: { id }, select: { id: true, yardId: true } }))?.yardId as YardId | undefined;
  }

  async save(em: EntityManager, yardId: YardId, person: CrewMember): Promise<void> {
    const { skills, left, ...settings } = person;
    await em.upsert(CrewMemberRow, { ...settings, yardId, hasLeft: left }, ['id']);
    await em.delete(SkillRow, { crewMemberId: person.id });
    const each = [...new Set(skills)];
    if (each.length > 0) await em.insert(SkillRow, each.map((skill) => ({ crewMemberId: person.id, skill })));
  }
}
