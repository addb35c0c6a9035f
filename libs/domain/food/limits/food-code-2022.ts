import { FSIS_A_2021 } from './fsis-appendix-a-2021.js';
import type { HoldRow, LimitSet } from './limit.js';

const MINUTE_S = 60;
const HOUR_S = 3600;

/** Hold chart of whole-meat roasts, 3-401.11(B)(2), as printed: °F and time. [FDA-FC22]; the rows of 131, 142, 151 and 153 °F from memory. */
export const ROAST_CHART_2022: readonly HoldRow[] = [
  { tempF: 130, holdS: 112 * MINUTE_S }, { tempF: 131, holdS: 89 * MINUTE_S }, { tempF: 133, holdS: 56 * MINUTE_S }, { tempF: 135, holdS: 36 * MINUTE_S }, { tempF: 136, holdS: 28 * MINUTE_S },
  { tempF: 138, holdS: 18 * MINUTE_S }, { tempF: 140, holdS: 12 * MINUTE_S }, { tempF: 142, holdS: 8 * MINUTE_S }, { tempF: 144, holdS: 5 * MINUTE_S }, { tempF: 145, holdS: 4 * MINUTE_S }, { tempF: 147, holdS: 134 },
  { tempF: 149, holdS: 85 }, { tempF: 151, holdS: 54 }, { tempF: 153, holdS: 34 }, { tempF: 155, holdS: 22 }, { tempF: 157, holdS: 14 }, { tempF: 158, holdS: 0 },
];

/** US Food Code, 2022 edition. A model code: what binds a kitchen is its state's or county's adoption, often of an older edition. [FDA-FC22] */
export const FOOD_CODE_2022: LimitSet = {
  code: 'food-code',
  edition: '2022',
  cooking: {
    intact: { section: '3-401.11(A)(1)', printed: '145 °F (63 °C), 15 s', rows: [{ tempF: 145, holdS: 15 }] },
    ground: {
      section: '3-401.11(A)(2)', printed: '155 °F (68 °C), 17 s; or 145 °F 3 min, 150 °F 1 min, 158 °F under 1 s',
      rows: [{ tempF: 145, holdS: 3 * MINUTE_S }, { tempF: 150, holdS: MINUTE_S }, { tempF: 155, holdS: 17 }, { tempF: 158, holdS: 0 }],
    },
    poultry: { section: '3-401.11(A)(3)', printed: '165 °F (74 °C), under 1 s', rows: [{ tempF: 165, holdS: 0 }] },
    roast: { section: '3-401.11(B)', printed: 'chart: 130 °F 112 min ... 158 °F 0 s', rows: ROAST_CHART_2022 },
  },
  roastOvens: {
    section: '3-401.11(B)(1)', printed: 'under 10 lb: still dry 350 °F, convection 325 °F; 10 lb or more: 250 °F; high humidity 250 °F or less',
    rows: [
      { oven: 'still-dry', belowKg: 4.5359237, atLeastF: 350 }, { oven: 'still-dry', belowKg: undefined, atLeastF: 250 }, { oven: 'convection', belowKg: 4.5359237, atLeastF: 325 },
      { oven: 'convection', belowKg: undefined, atLeastF: 250 }, { oven: 'humid', belowKg: undefined, atMostF: 250 },
    ],
  },
  // The Food Code has no come-up: the guideline for plants is the best published support.
  comeUp: { from: FSIS_A_2021, section: FSIS_A_2021.comeUpSection, printed: 'between 50 and 130 °F 6 h or less', fromF: 50, toF: 130, withinS: 6 * HOUR_S },
  hotHold: { section: '3-501.16(A)(1)', printed: '135 °F (57 °C) or above', tempF: 135 },
  hotHoldRoast: { section: '3-501.16(A)(1)', printed: '130 °F (54 °C) or above, roasts cooked by 3-401.11(B)', tempF: 130 },
  coldHold: { section: '3-501.16(A)(2)', printed: '41 °F (5 °C) or below', tempF: 41 },
  cooling: {
    section: '3-501.14(A)', printed: '135 to 70 °F within 2 h, 135 to 41 °F within a total of 6 h',
    stages: [{ fromF: 135, toF: 70, withinS: 2 * HOUR_S }, { fromF: 135, toF: 41, withinS: 6 * HOUR_S }],
  },
  reheat: { section: '3-403.11(A), (D)', printed: '165 °F (74 °C) for 15 s within 2 h of 41 °F', tempF: 165, holdS: 15, fromF: 41, withinS: 2 * HOUR_S },
  timeControl: { section: '3-501.19(B)', printed: '4 h from 41 °F or below or 135 °F or above', startsColdF: 41, startsHotF: 135, warmestF: undefined, withinS: 4 * HOUR_S },
  timeControlCold: { section: '3-501.19(C)', printed: '6 h from 41 °F or below, never above 70 °F (21 °C)', startsColdF: 41, startsHotF: undefined, warmestF: 70, withinS: 6 * HOUR_S },
};
