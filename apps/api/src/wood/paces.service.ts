import { Injectable } from '@nestjs/common';
import type { PitSettings } from '@stokehold/domain/contract';
import { type EpochS, later, type PitId, type YardId } from '@stokehold/domain/quantity';
import type { RunningShift } from '@stokehold/domain/shift';
import { dryMassKg, KINDLED_AFTER_S, type Pace, usualDryKgPerS } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { WoodStore } from './wood.store.js';

/** How fast the fires of a night take wood: the one answer that carts, pulls and alarms are reckoned from. */
@Injectable()
export class Paces {
  constructor(private readonly store: WoodStore) {}

  /**
   * @param pits    of the yard
   * @param recent  dry wood a second as believed of the last hour, of the fires that burn
   * @returns of the pits of the shift
   */
  async of(em: EntityManager, yardId: YardId, now: EpochS, night: { readonly shift: RunningShift; readonly pits: readonly PitSettings[]; readonly recent: ReadonlyMap<PitId, number> }): Promise<ReadonlyMap<PitId, Pace>> {
    const { shift, pits, recent } = night;
    const inFire = new Map(shift.pits.map(({ pitId, lightAt }) => [pitId, later(lightAt, KINDLED_AFTER_S)]));
    const burned = await this.store.burnedBetween(em, yardId, { from: shift.from, until: now }, new Map([...inFire].map(([pitId, at]) => [pitId, [at]])));
    const lots = await this.store.lots(em, yardId);
    const pieceKg = new Map(lots.map((lot) => [lot.id, dryMassKg(lot)]));
    return new Map(pits.flatMap((pit): readonly (readonly [PitId, Pace])[] => {
      const from = inFire.get(pit.id);
      if (from === undefined) return [];
      const lately = from < now ? recent.get(pit.id) : undefined;
      const own = burned.filter(({ pitId, at }) => pitId === pit.id && at >= from);
      return [[pit.id, {
        usualDryKgPerS: usualDryKgPerS({ lengthM: pit.chamberLengthM, diameterM: pit.chamberDiameterM }), ...(lately !== undefined && { recentDryKgPerS: lately }),
        burnedDryKg: own.reduce((sum, { lotId, pieces }) => sum + pieces * (pieceKg.get(lotId) ?? 0), 0), burnedS: Math.max(0, now - from),
      }]];
    }));
  }
}
