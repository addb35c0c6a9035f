import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('pay_rules')
export class PayRulesRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @Column('integer', { name: 'paid_break_up_to_s' }) paidBreakUpToS: number;
  /** Wall times of the yard, '22:00'. */
  @Column('text', { name: 'night_from' }) nightFrom: string;
  @Column('text', { name: 'night_until' }) nightUntil: string;
  @Column('integer', { name: 'night_extra_permille' }) nightExtraPermille: number;
  @Column('integer', { name: 'overtime_after_s' }) overtimeAfterS: number;
  @Column('integer', { name: 'overtime_extra_permille' }) overtimeExtraPermille: number;
}
