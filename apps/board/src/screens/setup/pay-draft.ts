import type { PayRulesView } from '@stokehold/domain/contract';
import type { FormReading } from '../../parts/form-reading.js';

/** The pay rules as they stand in their fields: minutes, hours, percent and wall times. */
export interface PayDraft {
  readonly breakMin: string;
  readonly nightFrom: string;
  readonly nightUntil: string;
  readonly nightPercent: string;
  readonly overtimeHours: string;
  readonly overtimePercent: string;
}

const DAY_HOURS = 24;

/** @param rules  overtime after a whole day is none: its field is empty */
export const draftOf = (rules: PayRulesView): PayDraft => ({
  breakMin: String(rules.paidBreakUpToS / 60), nightFrom: rules.nightFrom, nightUntil: rules.nightUntil, nightPercent: String(rules.nightExtraPermille / 10),
  overtimeHours: rules.overtimeAfterS >= DAY_HOURS * 3600 ? '' : String(rules.overtimeAfterS / 3600), overtimePercent: String(rules.overtimeExtraPermille / 10),
});

/** The rules of a draft; undefined, with what is wrong kept by the reading, where a field cannot be read. */
export function rulesOf(draft: PayDraft, reading: FormReading): PayRulesView | undefined {
  const breakMin = reading.number('breakMin', draft.breakMin, { min: 0, max: 240 });
  const nightFrom = reading.clock('nightFrom', draft.nightFrom);
  const nightUntil = reading.clock('nightUntil', draft.nightUntil);
  const night = reading.number('nightPercent', draft.nightPercent, { min: 0, max: 300 });
  const hours = reading.optionalNumber('overtimeHours', draft.overtimeHours, { min: 0, max: DAY_HOURS }) ?? DAY_HOURS;
  const overtime = reading.number('overtimePercent', draft.overtimePercent, { min: 0, max: 300 });
  if (!reading.good || breakMin === undefined || nightFrom === undefined || nightUntil === undefined || night === undefined || overtime === undefined) return undefined;
  return {
    paidBreakUpToS: Math.round(breakMin * 60), nightFrom, nightUntil, nightExtraPermille: Math.round(night * 10), overtimeAfterS: Math.round(hours * 3600), overtimeExtraPermille: Math.round(overtime * 10),
  };
}
