import type { CoolingLimit } from './limit.js';

const HOUR_S = 3600;
const from = { code: 'fsis-appendix-b', edition: '2021' } as const;

/** Option 1, any cooked product. [FSIS-B21]; figures read in the 1999 text, of 2021 from memory. */
export const FSIS_B_OPTION_1: CoolingLimit = {
  from, section: 'Appendix B option 1', printed: '130 to 80 °F in 1.5 h or less, 80 to 40 °F in 5 h or less', stages: [{ fromF: 130, toF: 80, withinS: 1.5 * HOUR_S }, { fromF: 80, toF: 40, withinS: 5 * HOUR_S }],
};
/** Option 2, uncured, begun within 90 minutes of the end of cooking. [FSIS-B21]; university summaries. */
export const FSIS_B_OPTION_2: CoolingLimit = {
  from, section: 'Appendix B option 2', printed: '120 to 80 °F in 1 h or less, 80 to 55 °F in 5 h or less, then on to 40 °F', stages: [{ fromF: 120, toF: 80, withinS: HOUR_S }, { fromF: 80, toF: 55, withinS: 5 * HOUR_S }],
};
/** Option 3, cured. [FSIS-B21]; from memory. */
export const FSIS_B_OPTION_3: CoolingLimit = {
  from, section: 'Appendix B option 3', printed: '130 to 80 °F in 5 h or less, 80 to 45 °F in 10 h or less, cured', stages: [{ fromF: 130, toF: 80, withinS: 5 * HOUR_S }, { fromF: 80, toF: 45, withinS: 10 * HOUR_S }],
};
