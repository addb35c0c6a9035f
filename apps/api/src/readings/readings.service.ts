import { Injectable } from '@nestjs/common';
import type { ReadingsRecorded, RecordReadings } from '@stokehold/domain/contract';
import { type EpochS, fromIso, type PitId, type YardId } from '@stokehold/domain/quantity';
import { deviceTime } from '@stokehold/domain/shift';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, refused } from '../platform/index.js';
import { ReadingsStore, type ZoneMean } from './readings.store.js';

/** Probe readings: kept once, and handed out as means. */
@Injectable()
export class Readings {
  constructor(
    private readonly commands: Commands,
    private readonly store: ReadingsStore,
  ) {}

  /** Keeps a batch; what was sent before is counted and not kept again. One unknown probe refuses the batch, so that it is noticed. */
  record(actor: Actor, command: RecordReadings): Promise<ReadingsRecorded> {
    return this.commands.run(actor, 'record-readings', command, async (deed) => {
      const ids = [...new Set(command.readings.map(({ probeId }) => probeId))].sort();
      const probes = await this.store.probes(deed.em, deed.yardId, ids);
      const unknown = ids.find((id) => !probes.some((probe) => probe.id === id));
      if (unknown) refused('probe-unknown', `No probe ${unknown} is set up in this yard. Add it to its pit, then send the readings again.`, { probeId: unknown });
      const sentAt = command.sentAt === undefined ? {} : { sentAt: fromIso(command.sentAt) };
      const readings = command.readings.map(({ probeId, tempC, takenAt }) => {
        const deviceTakenAt = fromIso(takenAt);
        return { probeId, tempC, deviceTakenAt, takenAt: deviceTime({ deviceAt: deviceTakenAt, ...sentAt, arrivedAt: deed.now }).at };
      });
      const kept = await this.store.add(deed.em, readings, deed.now);
      const pitIds = [...new Set(probes.filter(({ id }) => kept.includes(id)).map(({ pitId }) => pitId))];
      if (pitIds.length > 0) deed.tell({ kind: 'readings-recorded', pitIds });
      return { kept: kept.length, repeated: readings.length - kept.length };
    });
  }

  /** What the probes showed per pit, in stretches of `stretchS` after `from` up to `until`; a pit without readings is absent. */
  async means(em: EntityManager, yardId: YardId, span: { from: EpochS; until: EpochS; stretchS: number }): Promise<ReadonlyMap<PitId, readonly ZoneMean[]>> {
    const means = await this.store.means(em, yardId, span);
    return new Map([...new Set(means.map(({ pitId }) => pitId))].map((pitId) => [pitId, means.filter((mean) => mean.pitId === pitId)]));
  }
}
