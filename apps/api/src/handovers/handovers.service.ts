import { Injectable } from '@nestjs/common';
import type { Handover, HandoverNow, PitSettings, RouteInput, Routes, SignHandover } from '@stokehold/domain/contract';
import { type PersonId, toIso } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Alarms } from '../alarms/index.js';
import { Food } from '../food/index.js';
import { Fires } from '../pits/index.js';
import { type Actor, Clock, Commands, type Deed, Ids, refused } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { WoodViews } from '../wood/index.js';
import { Yards } from '../yards/index.js';
import { HandoversStore } from './handovers.store.js';
import { OpenWork } from './open-work.js';

/** How many handovers a screen shows. */
const SHOWN = 20;

type Moment = Pick<Deed, 'em' | 'yardId' | 'now'>;

/** How the fires of the night stand, what lies on the pits, what is left: gathered from those who know it. */
@Injectable()
export class NightSummary {
  constructor(
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly fires: Fires,
    private readonly food: Food,
    private readonly wood: WoodViews,
    private readonly alarms: Alarms,
  ) {}

  async now(deed: Moment): Promise<Pick<Handover, 'fires' | 'food' | 'splitsLeft' | 'openAlarms' | 'alarms'>> {
    const { em, yardId, now } = deed;
    const pits = await this.yards.pits(em, yardId);
    const alarms = await this.alarms.view(em, yardId);
    const nameOf = (id: string | null) => pits.find((pit) => pit.id === id)?.name ?? null;
    const wood = await this.wood.view(em, yardId, now, await this.fires.burnRates(em, yardId, now));
    return {
      fires: await this.firesOf(deed, pits),
      food: (await this.food.cooks(em, yardId, now)).flatMap(({ cut, lies }) =>
        pits.flatMap(({ id, name }) => {
          const pieces = lies.filter(({ pitId }) => pitId === id).reduce((sum, lie) => sum + lie.pieces, 0);
          return pieces > 0 ? [{ pit: name, cut, pieces }] : [];
        }),
      ),
      splitsLeft: wood.splitsLeft,
      openAlarms: alarms.length,
      alarms: alarms.map(({ kind, pitId, raisedAt }) => ({ kind, pit: nameOf(pitId), since: raisedAt })),
    };
  }

  /** The pits that burn tonight, by name; a fire of which nothing is known says so by nulls. */
  private async firesOf({ em, yardId, now }: Moment, pits: readonly PitSettings[]): Promise<Handover['fires']> {
    const shift = await this.shifts.running(em, yardId, now);
    const known = await this.fires.view(em, yardId, now);
    return pits
      .filter(({ id }) => shift?.pits.some(({ pitId }) => pitId === id))
      .map(({ id, name }) => {
        const seen = known.find(({ pitId }) => pitId === id);
        return { pit: name, bed: seen?.fire?.bed ?? null, tempC: seen?.fire?.chamberTempC.p50 ?? null, dueAt: seen?.due?.dueAt ?? null };
      });
  }
}

/** The signed summary with which a crew hands the night over. */
@Injectable()
export class Handovers {
  constructor(
    private readonly commands: Commands,
    private readonly store: HandoversStore,
    private readonly summary: NightSummary,
    private readonly open: OpenWork,
    private readonly yards: Yards,
    private readonly ids: Ids,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  sign(actor: Actor, command: SignHandover): Promise<Handover> {
    return this.commands.run(actor, 'sign-handover', command, async (deed) => {
      const { toPersonId, note } = command;
      const now = await this.nightAt(deed, actor, toPersonId);
      const handover: Handover = { id: this.ids.next(), signedAt: toIso(deed.now), signedBy: actor.person?.name ?? '', note, ...now };
      await this.store.add(deed.em, deed.yardId, handover, { by: actor.person?.id ?? null, to: toPersonId });
      deed.tell({ kind: 'handover-signed' });
      return handover;
    });
  }

  /** What would be signed just now. */
  now(actor: Actor, { toPersonId }: RouteInput<Routes['handoverNow']>): Promise<HandoverNow> {
    return this.nightAt({ em: this.database.manager, yardId: actor.yardId, now: this.clock.now(actor.yardId) }, actor, toPersonId ?? null);
  }

  private async nightAt(moment: Moment, actor: Actor, toId: PersonId | null): Promise<HandoverNow> {
    const crew = await this.yards.crew(moment.em, moment.yardId);
    const pits = await this.yards.pits(moment.em, moment.yardId);
    const to = crew.find(({ id, left }) => id === toId && !left);
    if (toId && !to) refused('person-unknown', 'The one you hand over to is not of this crew. Choose somebody from the crew list, or nobody.');
    const names = {
      pit: (id: string | null) => pits.find((pit) => pit.id === id)?.name ?? null,
      person: (id: string) => crew.find((one) => one.id === id)?.name ?? '',
    };
    const open = await this.open.now(moment, { by: actor.person?.id ?? null, to: toId, names });
    return { to: to?.name ?? null, ...(await this.summary.now(moment)), ...open };
  }

  last({ yardId }: Actor): Promise<Handover[]> {
    return this.store.last(this.database.manager, yardId, SHOWN);
  }
}
