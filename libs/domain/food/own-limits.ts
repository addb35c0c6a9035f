import { ok, refuse, type Result } from '../quantity/index.js';
import { FOOD_CODE_2013 } from './limits/food-code-2013.js';
import { FOOD_CODE_2022 } from './limits/food-code-2022.js';
import { fsis2021 } from './limits/fsis-2021.js';
import { FSIS_B_OPTION_1, FSIS_B_OPTION_2, FSIS_B_OPTION_3 } from './limits/fsis-appendix-b-2021.js';
import type { CookingKind, LimitSet } from './limits/limit.js';

/** Sets of limits that a yard may name. [FDA-FC22], [FDA-FC13], [FSIS-A21], [FSIS-B21] */
export const EDITIONS = {
  'food-code-2022': FOOD_CODE_2022, 'food-code-2013': FOOD_CODE_2013, 'fsis-2021-option-1': fsis2021(FSIS_B_OPTION_1), 'fsis-2021-option-2': fsis2021(FSIS_B_OPTION_2), 'fsis-2021-option-3': fsis2021(FSIS_B_OPTION_3),
} as const satisfies Readonly<Record<string, LimitSet>>;
export type EditionName = keyof typeof EDITIONS;

/** A kitchen's own values; each absent one is the code's. Only stricter ones are taken. */
export interface OwnLimits {
  readonly hotHoldC?: number;
  readonly coldHoldC?: number;
  /** All parts at least this for the longest hold of the code's rows. */
  readonly cookingC?: Partial<Readonly<Record<CookingKind, number>>>;
  readonly coolingFirstS?: number;
  readonly coolingTotalS?: number;
  readonly reheatC?: number;
  readonly comeUpS?: number;
}
export type OwnLimitRefusal = { readonly code: 'laxer-than-code'; readonly field: keyof OwnLimits; readonly value: number; readonly section: string; readonly printed: string };

const toF = (tempC: number) => tempC * 1.8 + 32;

/** The first of a kitchen's values that asks less than the code. */
function laxer(set: LimitSet, own: OwnLimits): OwnLimitRefusal | undefined {
  const [first, total] = set.cooling.stages;
  const rows: readonly (readonly [keyof OwnLimits, number | undefined, boolean, { section: string; printed: string }])[] = [
    ['hotHoldC', own.hotHoldC, toF(own.hotHoldC ?? 999) >= set.hotHold.tempF - 1e-9, set.hotHold],
    ['coldHoldC', own.coldHoldC, toF(own.coldHoldC ?? -99) <= set.coldHold.tempF + 1e-9, set.coldHold],
    ['coolingFirstS', own.coolingFirstS, (own.coolingFirstS ?? 1) <= first!.withinS && (own.coolingFirstS ?? 1) > 0, set.cooling],
    ['coolingTotalS', own.coolingTotalS, (own.coolingTotalS ?? 1) <= total!.withinS && (own.coolingTotalS ?? 1) > 0, set.cooling],
    ['reheatC', own.reheatC, toF(own.reheatC ?? 999) >= set.reheat.tempF - 1e-9, set.reheat],
    ['comeUpS', own.comeUpS, (own.comeUpS ?? 1) <= set.comeUp.withinS && (own.comeUpS ?? 1) > 0, set.comeUp],
    ...(Object.entries(own.cookingC ?? {}) as [CookingKind, number][]).map(([kind, tempC]) => {
      const { rows: chart, ...where } = set.cooking[kind];
      return ['cookingC', tempC, toF(tempC) >= chart[0]!.tempF - 1e-9, where] as const;
    }),
  ];
  const bad = rows.find(([, value, strict]) => value !== undefined && !strict);
  return bad && { code: 'laxer-than-code', field: bad[0], value: bad[1]!, section: bad[3].section, printed: bad[3].printed };
}

/**
 * The code's limits with a kitchen's stricter values in their place. A cooking temperature of the kitchen leaves the rows at and above it,
 * and puts its own before them with the time of the code's row below.
 *
 * @returns the limits to hold to, or the first value that asks less than the code. Source: none needed.
 */
export function withOwn(set: LimitSet, own: OwnLimits): Result<LimitSet, OwnLimitRefusal> {
  const bad = laxer(set, own);
  if (bad) return refuse(bad);
  const [first, total] = set.cooling.stages as readonly [LimitSet['cooling']['stages'][number], LimitSet['cooling']['stages'][number]];
  const cooking = Object.fromEntries(
    (Object.keys(set.cooking) as CookingKind[]).map((kind) => {
      const limit = set.cooking[kind];
      const tempC = own.cookingC?.[kind];
      if (tempC === undefined) return [kind, limit];
      const below = [...limit.rows].reverse().find(({ tempF }) => tempF <= toF(tempC) + 1e-9)!;
      return [kind, { ...limit, rows: [{ tempF: toF(tempC), holdS: below.holdS }, ...limit.rows.filter(({ tempF }) => tempF > toF(tempC) + 1e-9)] }];
    }),
  ) as unknown as LimitSet['cooking'];
  return ok({
    ...set,
    cooking,
    comeUp: { ...set.comeUp, withinS: own.comeUpS ?? set.comeUp.withinS },
    hotHold: { ...set.hotHold, tempF: own.hotHoldC === undefined ? set.hotHold.tempF : toF(own.hotHoldC) },
    hotHoldRoast: { ...set.hotHoldRoast, tempF: own.hotHoldC === undefined ? set.hotHoldRoast.tempF : toF(own.hotHoldC) },
    coldHold: { ...set.coldHold, tempF: own.coldHoldC === undefined ? set.coldHold.tempF : toF(own.coldHoldC) },
    cooling: { ...set.cooling, stages: [{ ...first, withinS: own.coolingFirstS ?? first.withinS }, { ...total, withinS: own.coolingTotalS ?? total.withinS }] },
    reheat: { ...set.reheat, tempF: own.reheatC === undefined ? set.reheat.tempF : toF(own.reheatC) },
  });
}
