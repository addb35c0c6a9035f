import { Injectable } from '@nestjs/common';
import type { YardSettings } from '@stokehold/domain/contract';
import type { EpochS, YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { holdYard, Remembered } from '../platform/index.js';
import { YardRow } from './yard.row.js';

/** A yard as it is set up. */
export type Yard = YardSettings & { readonly id: YardId; readonly practice: boolean };

const yardOf = ({ woodXM, woodYM, latitudeDeg, longitudeDeg, seq: _seq, createdAt: _createdAt, id, ...row }: YardRow): Yard => ({
  ...row,
  id: id as YardId,
  woodPlace: { xM: woodXM, yM: woodYM },
  ...(latitudeDeg !== null && longitudeDeg !== null && { place: { latitudeDeg, longitudeDeg } }),
});
const columnsOf = ({ woodPlace, place, ...settings }: YardSettings) => ({
  ...settings,
  woodXM: woodPlace.xM,
  woodYM: woodPlace.yM,
  latitudeDeg: place?.latitudeDeg ?? null,
  longitudeDeg: place?.longitudeDeg ?? null,
});

@Injectable()
export class YardStore {
  private readonly remembered = new Remembered<Yard>(['yard-set-up']);

  async yard(em: EntityManager, id: YardId): Promise<Yard> {
    return this.remembered.once(em, id, async () => yardOf(await em.findOneByOrFail(YardRow, { id })));
  }

  /** The oldest first. */
  async all(em: EntityManager): Promise<Yard[]> {
    return (await em.find(YardRow, { order: { createdAt: 'ASC', id: 'ASC' } })).map(yardOf);
  }

  async add(em: EntityManager, yard: { id: YardId; settings: YardSettings; practice: boolean; now: EpochS }): Promise<void> {
    await em.insert(YardRow, { id: yard.id, ...columnsOf(yard.settings), practice: yard.practice, createdAt: new Date(yard.now * 1000) });
  }

  async removePractice(em: EntityManager): Promise<void> {
    await em.delete(YardRow, { practice: true });
  }

  async change(em: EntityManager, id: YardId, settings: YardSettings): Promise<void> {
    this.remembered.forget(em);
    await em.update(YardRow, { id }, columnsOf(settings));
  }

  /** One change of the setup at a time: what is checked here still holds when it is written. */
  async hold(em: EntityManager, id: YardId): Promise<void> {
    await holdYard(em, id);
    this.remembered.forget(em);
  }
}
