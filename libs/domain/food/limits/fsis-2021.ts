import { FOOD_CODE_2022 } from './food-code-2022.js';
import { FSIS_A_2021, meatRows, poultryRows } from './fsis-appendix-a-2021.js';
import type { CookingLimit, CoolingLimit, LimitSet } from './limit.js';

const meat: CookingLimit = { from: FSIS_A_2021, section: FSIS_A_2021.meatSection, printed: '6.5 log column: 130 °F 112 min ... 158 °F 0 s', rows: meatRows(6.5) };

/**
 * The guidelines of FSIS for plants under inspection: cooking by Appendix A (6.5 log of Salmonella for meat, 7 log for poultry, the fat of
 * the bird not known), cooling by one option of Appendix B. What they do not speak of (the oven of a roast, keeping hot and cold, reheating, time) stays the
 * Food Code's and says so. Ground meat is held to the meat column, not to the shorter one for patties. [FSIS-A21], [FSIS-B21], [FDA-FC22]
 */
export const fsis2021 = (cooling: CoolingLimit): LimitSet => ({
  ...FOOD_CODE_2022,
  cooking: {
    intact: meat, ground: meat, roast: meat,
    poultry: { from: FSIS_A_2021, section: FSIS_A_2021.poultrySection, printed: '7 log, 12 % fat, longer of chicken and turkey: 136 °F 81.4 min ... 165 °F 0 s', rows: poultryRows('other', undefined) },
  },
  cooling,
});
