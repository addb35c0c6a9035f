import type { FoodEntryView } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One line of the food log; never written over. `at` is the server's time for it, `device_at` the device's own. */
@Entity('food_entry')
export class FoodEntryRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'cook_id' }) cookId: string;
  @Column('text') kind: FoodEntryView['kind'];
  @Column('timestamptz') at: Date;
  @Column('timestamptz', { name: 'device_at' }) deviceAt: Date;
  @Column('timestamptz', { name: 'recorded_at' }) recordedAt: Date;
  @Column('text', { nullable: true }) stage: FoodEntryView['stage'];
  @Column('double precision', { name: 'temp_c', nullable: true }) tempC: number | null;
  @Column('text', { name: 'wrapped_in', nullable: true }) wrappedIn: FoodEntryView['wrappedIn'];
  @Column('text', { nullable: true }) action: FoodEntryView['action'];
  @Column('text', { name: 'limit_name', nullable: true }) limitName: FoodEntryView['limit'];
  @Column('text', { nullable: true }) note: string | null;
  @Column('uuid', { nullable: true }) corrects: string | null;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('uuid', { name: 'device_id' }) deviceId: string;
  @Column('boolean', { name: 'by_probe' }) byProbe: boolean;
}
