import { FOOD_CODE_2022 } from './food-code-2022.js';
import type { LimitSet } from './limit.js';

const MINUTE_S = 60;

/**
 * US Food Code, 2013 edition, still in force in many states. Beside 2022: ground and injected meat 155 °F for 15 s (17 s since 2017), poultry
 * 165 °F for 15 s (under 1 s since 2017). [FDA-FC13]
 */
export const FOOD_CODE_2013: LimitSet = {
  ...FOOD_CODE_2022,
  edition: '2013',
  cooking: {
    ...FOOD_CODE_2022.cooking,
    ground: {
      section: '3-401.11(A)(2)', printed: '155 °F (68 °C), 15 s; or 145 °F 3 min, 150 °F 1 min, 158 °F under 1 s',
      rows: [{ tempF: 145, holdS: 3 * MINUTE_S }, { tempF: 150, holdS: MINUTE_S }, { tempF: 155, holdS: 15 }, { tempF: 158, holdS: 0 }],
    },
    poultry: { section: '3-401.11(A)(3)', printed: '165 °F (74 °C), 15 s', rows: [{ tempF: 165, holdS: 15 }] },
  },
};
