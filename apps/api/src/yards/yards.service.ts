import { Injectable } from '@nestjs/common';
import type { CrewMember, Done, PitSettings, SavePit, SaveYard, Setup, YardSettings } from '@stokehold/domain/contract';
import type { PitId, YardId } from '@stokehold/domain/quantity';
import { IANAZone } from 'luxon';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, type Deed, refused, RefusalError } from '../platform/index.js';
import { CrewStore } from './crew.store.js';
import { PitStore } from './pit.store.js';
import { type Yard, YardStore } from './yard.store.js';

/** The yard as it is set up, and its pits. */
@Injectable()
export class Yards {
  constructor(
    private readonly commands: Commands,
    private readonly yards: YardStore,
    private readonly pitStore: PitStore,
    private readonly crewStore: CrewStore,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  settings(em: EntityManager, yardId: YardId): Promise<Yard> {
    return this.yards.yard(em, yardId);
  }

  /** Every yard of the house, the oldest first. */
  all(em: EntityManager): Promise<Yard[]> {
    return this.yards.all(em);
  }

  /** By name; retired pits are among them. */
  pits(em: EntityManager, yardId: YardId): Promise<PitSettings[]> {
    return this.pitStore.pits(em, { yardId });
  }

  /** The pit; refuses with `pit-unknown`, with a yard given also when the pit stands in another one. */
  async pit(em: EntityManager, id: PitId, yardId?: YardId): Promise<PitSettings> {
    const [pit] = await this.pitStore.pits(em, { id, ...(yardId && { yardId }) });
    return pit ?? refused('pit-unknown', 'There is no such pit in this yard. Open Setup to see which there are.');
  }

  /** By name; those who have left are among them. */
  crew(em: EntityManager, yardId: YardId): Promise<CrewMember[]> {
    return this.crewStore.crew(em, yardId);
  }

  async setup(actor: Actor): Promise<Setup> {
    const em = this.database.manager;
    return {
      yard: await this.yards.yard(em, actor.yardId),
      pits: await this.pits(em, actor.yardId),
      crew: await this.crewStore.crew(em, actor.yardId),
    };
  }

  /** A new yard: at the first run, and for a practice night. */
  async create(em: EntityManager, yard: { id: YardId; settings: YardSettings; practice: boolean }): Promise<void> {
    requireTimeZone(yard.settings);
    await this.yards.add(em, { ...yard, now: this.clock.now(yard.id) });
  }

  /** Practice yards and all that happened in them: a practice night leaves nothing among the real records. */
  async forgetPractice(em: EntityManager): Promise<void> {
    await this.yards.removePractice(em);
  }

  save(actor: Actor, command: SaveYard): Promise<Done> {
    return this.commands.run(actor, 'save-yard', command, async (deed) => {
      requireTimeZone(command.yard);
      await this.yards.change(deed.em, deed.yardId, command.yard);
      deed.tell({ kind: 'yard-set-up' });
      return { done: true };
    });
  }

  savePit(actor: Actor, command: SavePit): Promise<Done> {
    return this.commands.run(actor, 'save-pit', command, async (deed) => {
      const { pit } = command;
      await this.yards.hold(deed.em, deed.yardId);
      await this.requireOwnIds(deed, pit);
      requireNames(pit, await this.pits(deed.em, deed.yardId));
      await this.requireZones(deed, pit);
      if (pit.retired && (await this.pitStore.isBurning(deed.em, pit.id, deed.now))) {
        refused('pit-burning', `${pit.name} burns in this shift. Take it out of the shift first, or retire it afterwards.`, { pit: pit.name });
      }
      await this.pitStore.save(deed.em, deed.yardId, pit);
      deed.tell({ kind: 'pit-set-up', pitId: pit.id });
      return { done: true };
    });
  }

  private async requireOwnIds({ em, yardId }: Deed, pit: PitSettings): Promise<void> {
    const owner = await this.pitStore.yardOf(em, pit.id);
    if (owner !== undefined && owner !== yardId) refused('id-taken', 'Another pit has this id. Add the pit again, so that it gets one of its own.');
    const [elsewhere] = await this.pitStore.probesElsewhere(em, pit.id, pit.probes.map(({ id }) => id));
    if (elsewhere !== undefined) {
      refused('id-taken', `The probe ${elsewhere} belongs to another pit and its readings stay there. Take it off there and add it here as a new probe.`);
    }
  }

  private async requireZones({ em }: Deed, pit: PitSettings): Promise<void> {
    const zones = pit.zones.length;
    const astray = pit.probes.find(({ zone }) => zone >= zones);
    if (astray) refused('zone-unknown', `${pit.name} has ${zones} zones, counted from the fire end; the probe ${astray.name} is in none of them.`, { zones });
    const inUse = await this.pitStore.zonesInUse(em, pit.id);
    if (inUse > zones) refused('zone-in-use', `Pieces lie in zone ${inUse} of ${pit.name}. Move them first, then take the zone away.`, { zone: inUse });
  }
}

const same = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();

function requireNames(pit: PitSettings, others: readonly PitSettings[]): void {
  if (others.some(({ id, name }) => id !== pit.id && same(name, pit.name))) {
    refused('name-taken', `There is a pit called ${pit.name} already. Give this one a name of its own.`, { name: pit.name });
  }
  const twice = pit.probes.find((probe, nth) => pit.probes.some((other, n) => n < nth && (same(other.name, probe.name) || other.id === probe.id)));
  if (twice) refused('name-taken', `${pit.name} has two probes called ${twice.name}. Give each a name of its own.`, { name: twice.name });
}

function requireTimeZone({ timeZone }: YardSettings): void {
  if (IANAZone.isValidZone(timeZone)) return;
  const wants = 'a name of the time zone database, such as America/Chicago';
  throw new RefusalError(
    { code: 'input-invalid', detail: `There is no time zone ${timeZone}. Choose ${wants}.` },
    { fields: [{ path: 'yard.timeZone', wants }] },
  );
}
