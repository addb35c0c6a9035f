import type { Cut } from './cut.js';

const HOUR_S = 3600;
const MINUTE_S = 60;
const fToC = (tempF: number) => (tempF - 32) / 1.8;
/** A cooler's food, °C: 40 °F. Source: common practice, no source. */
const FROM_COOLER_C = fToC(40);

const BEEF_BRISKET = { waterFrac: 0.62, proteinFrac: 0.18, fatFrac: 0.19, ashFrac: 0.01 };
const PORK_BLADE = { waterFrac: 0.69, proteinFrac: 0.177, fatFrac: 0.124, ashFrac: 0.009 };
const SPARERIBS = { waterFrac: 0.598, proteinFrac: 0.1547, fatFrac: 0.234, ashFrac: 0.007 };
const CHICKEN = { waterFrac: 0.6599, proteinFrac: 0.186, fatFrac: 0.1506, ashFrac: 0.0079 };
const LEAN_LAMB = { waterFrac: 0.7342, proteinFrac: 0.2029, fatFrac: 0.0525, ashFrac: 0.0106 };

/**
 * Values to start from; a yard edits them and keeps its own. Compositions: beef midway between whole and trimmed, pork blade, spareribs
 * and chicken [USDA-SR], lamb [ASHRAE-R06]. Half thickness and exponent of brisket: our fit. Yields: brisket 0.56 to 0.60 [KERTH-MMB], [USDA-YIELD];
 * the others from memory of the same tables. Done, wrap, rest and hold: common practice, no source; poultry and sausage no lower than
 * [FDA-FC22] 3-401.11. What a cut bears of radiant heat, its grate and its portion: common practice, no source.
 */
export const STARTING_CUTS: readonly Cut[] = [
  {
    code: 'brisket', name: 'Brisket', meat: 'beef', state: 'intact', silhouette: 'slab',
    body: { exponent: 0.6, halfThicknessM: 0.06, referenceKg: 6.3, thicknessPower: 1 / 3 }, composition: BEEF_BRISKET, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(203), tenderHoursAt90: 1.5 }, wrap: { kind: 'paper', atCoreC: fToC(165) },
    rest: { leastS: HOUR_S, mostS: 2 * HOUR_S }, hold: { leastS: 0, mostS: 12 * HOUR_S }, bearsWPerM2: 600, areaM2PerKg: 0.021, yieldFrac: 0.58, portionKg: 0.17, usualKg: 6.3,
    source: 'composition: between USDA figures for whole and lean brisket; yield: smoked brisket, Kerth and others, 0.59; done, wrap, rest: common practice, no source',
  },
  {
    code: 'pork-shoulder', name: 'Pork shoulder', meat: 'pork', state: 'intact', silhouette: 'round',
    body: { exponent: 1.5, halfThicknessM: 0.075, referenceKg: 4, thicknessPower: 1 / 3 }, composition: PORK_BLADE, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(200), tenderHoursAt90: 1.2 }, wrap: { kind: 'foil', atCoreC: fToC(165) },
    rest: { leastS: 45 * MINUTE_S, mostS: 2 * HOUR_S }, hold: { leastS: 0, mostS: 8 * HOUR_S }, bearsWPerM2: 900, areaM2PerKg: 0.013, yieldFrac: 0.55, portionKg: 0.15, usualKg: 4,
    source: 'composition: USDA SR pork shoulder blade; yield: 0.50 to 0.60 as pulled meat, from memory; done, wrap, rest: common practice, no source',
  },
  {
    code: 'pork-spareribs', name: 'Pork spareribs', meat: 'pork', state: 'intact', silhouette: 'ribs',
    body: { exponent: 0, halfThicknessM: 0.016, referenceKg: 1.5, thicknessPower: 0 }, composition: SPARERIBS, startTempC: FROM_COOLER_C,
    done: { tenderHoursAt90: 1.3 }, rest: { leastS: 10 * MINUTE_S, mostS: 40 * MINUTE_S }, hold: { leastS: 0, mostS: 3 * HOUR_S },
    bearsWPerM2: 400, areaM2PerKg: 0.075, yieldFrac: 0.65, portionKg: 0.35, usualKg: 1.5,
    source: 'composition: USDA SR pork spareribs; yield with bone 0.65 to 0.70, from memory; thickness, done, rest: common practice, no source',
  },
  {
    code: 'beef-short-ribs', name: 'Beef short ribs', meat: 'beef', state: 'intact', silhouette: 'ribs',
    body: { exponent: 0.5, halfThicknessM: 0.035, referenceKg: 2.2, thicknessPower: 1 / 3 }, composition: BEEF_BRISKET, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(203), tenderHoursAt90: 1.5 }, wrap: { kind: 'paper', atCoreC: fToC(170) },
    rest: { leastS: 30 * MINUTE_S, mostS: 90 * MINUTE_S }, hold: { leastS: 0, mostS: 6 * HOUR_S }, bearsWPerM2: 600, areaM2PerKg: 0.034, yieldFrac: 0.6, portionKg: 0.4, usualKg: 2.2,
    source: 'composition: as brisket; thickness, done, wrap, rest, yield: common practice, no source',
  },
  {
    code: 'turkey', name: 'Turkey', meat: 'poultry', state: 'intact', silhouette: 'bird',
    body: { exponent: 1.3, halfThicknessM: 0.058, referenceKg: 6.2, thicknessPower: 1 / 3 }, composition: CHICKEN, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(165) }, rest: { leastS: 20 * MINUTE_S, mostS: HOUR_S }, hold: { leastS: 0, mostS: 3 * HOUR_S },
    bearsWPerM2: 500, areaM2PerKg: 0.013, yieldFrac: 0.55, portionKg: 0.17, usualKg: 6.2,
    source: 'composition: as chicken, meat and skin; done: Food Code 3-401.11(A)(3), 165 °F; thickness of the breast, rest, yield: common practice, no source',
  },
  {
    code: 'chicken', name: 'Chicken', meat: 'poultry', state: 'intact', silhouette: 'bird',
    body: { exponent: 1.3, halfThicknessM: 0.036, referenceKg: 1.8, thicknessPower: 1 / 3 }, composition: CHICKEN, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(165) }, rest: { leastS: 10 * MINUTE_S, mostS: 30 * MINUTE_S }, hold: { leastS: 0, mostS: 2 * HOUR_S },
    bearsWPerM2: 700, areaM2PerKg: 0.022, yieldFrac: 0.7, portionKg: 0.3, usualKg: 1.8,
    source: 'composition: ASHRAE and USDA SR chicken, meat and skin; yield 0.70 to 0.76 from memory; done: Food Code 3-401.11(A)(3), 165 °F',
  },
  {
    code: 'sausage', name: 'Sausage', meat: 'pork', state: 'ground', silhouette: 'link',
    body: { exponent: 1, halfThicknessM: 0.016, referenceKg: 0.19, thicknessPower: 0 }, composition: { waterFrac: 0.56, proteinFrac: 0.15, fatFrac: 0.27, ashFrac: 0.02 }, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(160) }, rest: { leastS: 5 * MINUTE_S, mostS: 20 * MINUTE_S }, hold: { leastS: 0, mostS: 3 * HOUR_S },
    bearsWPerM2: 500, areaM2PerKg: 0.05, yieldFrac: 0.85, portionKg: 0.16, usualKg: 0.19,
    source: 'done above Food Code 3-401.11(A)(2), 155 °F for 17 s; composition, size, rest, yield: common practice, no source',
  },
  {
    code: 'lamb-shoulder', name: 'Lamb shoulder', meat: 'lamb', state: 'intact', silhouette: 'round',
    body: { exponent: 1.2, halfThicknessM: 0.055, referenceKg: 2.5, thicknessPower: 1 / 3 }, composition: LEAN_LAMB, startTempC: FROM_COOLER_C,
    done: { coreTempC: fToC(195), tenderHoursAt90: 1 }, wrap: { kind: 'foil', atCoreC: fToC(165) },
    rest: { leastS: 30 * MINUTE_S, mostS: HOUR_S }, hold: { leastS: 0, mostS: 4 * HOUR_S }, bearsWPerM2: 700, areaM2PerKg: 0.018, yieldFrac: 0.55, portionKg: 0.15, usualKg: 2.5,
    source: 'composition: ASHRAE lamb, lean; size, done, wrap, rest, yield: common practice, no source',
  },
];

/** A starting cut by its machine word. Source: none needed. */
export const cutByCode = (code: string): Cut | undefined => STARTING_CUTS.find((cut) => cut.code === code);
