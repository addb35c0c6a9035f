import type { TaskId } from '@stokehold/domain/quantity';
import type { PullView } from '@stokehold/domain/contract';
import type { CartLoad, PullWorth } from '@stokehold/scheduling/wood-pull';
import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { ToTrim } from './pull-work.js';

/** A load as it was planned, with what it was planned from. */
export interface KeptLoad extends CartLoad {
  readonly needJ: number;
  /** Piles that lay on its cart then. */
  readonly onCart: readonly string[];
  /** The task of its haul. */
  readonly taskId?: TaskId;
  /** The task of its trimming, with the splits to cut. */
  readonly trim?: { readonly taskId: TaskId; readonly wood: readonly ToTrim[] };
}

/** One pull of a night; only the last is current, the first says what was planned. */
@Entity('wood_pull')
export class WoodPullRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'shift_id' }) shiftId: string;
  @Column('timestamptz', { name: 'made_at' }) madeAt: Date;
  @Column('boolean', { name: 'is_current' }) isCurrent: boolean;
  @Column('text') because: PullView['because'];
  @Column('jsonb') loads: readonly KeptLoad[];
  /** Heat that each pit was thought to want from then on, by pit id. */
  @Column('jsonb', { name: 'need_j' }) needJ: Readonly<Record<string, number>>;
  /** The kitchen's wishes that the wood of each pit was chosen for, by pit id. */
  @Column('jsonb') mix: Readonly<Record<string, readonly string[]>>;
  @Column('jsonb') worth: PullWorth;
  @Column('double precision', { name: 'gap_frac' }) gapFrac: number;
  @Column('jsonb') changes: PullView['changes'];
  /** The hauls that it put into the night's work. */
  @Column('uuid', { name: 'task_ids', array: true }) taskIds: string[];
}
