import { ok, refuse, type Result } from '../quantity/index.js';

/** What kind of animal: which rows of a food code apply, and what may hang over what. */
export type Meat = 'beef' | 'pork' | 'lamb' | 'poultry';
/** Whole muscle, minced, or with brine or blades put into it: the food code asks more of the last two. */
export type MeatState = 'intact' | 'ground' | 'injected';
/** The outline that stands for it on a drawing. */
export type Silhouette = 'slab' | 'round' | 'ribs' | 'bird' | 'link';
export type WrapKind = 'foil' | 'paper';

/** Mass fractions of the raw cut; they are brought to a sum of 1 before use. */
export interface Composition {
  readonly waterFrac: number;
  readonly proteinFrac: number;
  readonly fatFrac: number;
  readonly ashFrac: number;
}

/** A body that heat enters from all sides, brought to one dimension: area grows with the distance from the core to this power. */
export interface Body {
  /** 0 a wide flat slab, 1 a long round, 2 a ball, between them for what has ends; 0 to 2. */
  readonly exponent: number;
  /** Half of the thickest section of a piece of `referenceKg`, m. */
  readonly halfThicknessM: number;
  readonly referenceKg: number;
  /** Half thickness grows with (weight / reference) to this power: 1/3 the same shape larger, 0 a casing of one width. */
  readonly thicknessPower: number;
}

/** When it comes off: core temperature, tenderness, or both; with both the later one decides. */
export interface DoneRule {
  readonly coreTempC?: number;
  /** Hours at 90 °C, or what is worth as much at other temperatures. */
  readonly tenderHoursAt90?: number;
}
export interface WrapRule {
  readonly kind: WrapKind;
  /** Wrapped when the core has come to this. */
  readonly atCoreC: number;
}
/** The span of a time after the pit, s. */
export interface Span {
  readonly leastS: number;
  readonly mostS: number;
}

/** All that is known of a cut before a piece of it is bought. Editable: a yard keeps its own values. */
export interface Cut {
  /** Machine word, unique in a yard. */
  readonly code: string;
  readonly name: string;
  readonly meat: Meat;
  readonly state: MeatState;
  readonly silhouette: Silhouette;
  readonly body: Body;
  readonly composition: Composition;
  readonly startTempC: number;
  readonly done: DoneRule;
  readonly wrap?: WrapRule;
  /** Standing after the pit before it is cut. */
  readonly rest: Span;
  /** Kept hot after the rest; `mostS` 0 is served at once. */
  readonly hold: Span;
  /** Radiant heat from the fire that its near side bears for the whole cook without scorching, W/m2. */
  readonly bearsWPerM2: number;
  /** Grate that one raw piece takes, m2 for each kilogram of it. */
  readonly areaM2PerKg: number;
  /** Cooked, trimmed and served over raw weight. */
  readonly yieldFrac: number;
  /** Cooked weight of one portion. */
  readonly portionKg: number;
  /** Usual weight of a piece, kg. */
  readonly usualKg: number;
  /** Where the values come from, for the people who edit them. */
  readonly source: string;
}

export type CutRefusal =
  | { readonly code: 'cut-value-out-of-range'; readonly field: string; readonly value: number; readonly min: number; readonly max: number }
  | { readonly code: 'done-rule-missing' }
  | { readonly code: 'wrap-after-done'; readonly wrapC: number; readonly doneC: number }
  | { readonly code: 'composition-not-whole'; readonly sumFrac: number };

type Row = readonly [field: string, value: number | undefined, min: number, max: number];
const rowsOf = (cut: Cut): readonly Row[] => [
  ['body.exponent', cut.body.exponent, 0, 2],
  ['body.halfThicknessM', cut.body.halfThicknessM, 0.004, 0.25],
  ['body.referenceKg', cut.body.referenceKg, 0.02, 300],
  ['body.thicknessPower', cut.body.thicknessPower, 0, 1],
  ['composition.waterFrac', cut.composition.waterFrac, 0.2, 0.85],
  ['composition.proteinFrac', cut.composition.proteinFrac, 0.05, 0.4],
  ['composition.fatFrac', cut.composition.fatFrac, 0, 0.6],
  ['composition.ashFrac', cut.composition.ashFrac, 0, 0.1],
  ['startTempC', cut.startTempC, -1, 30],
  ['done.coreTempC', cut.done.coreTempC, 50, 99],
  ['done.tenderHoursAt90', cut.done.tenderHoursAt90, 0.05, 10],
  ['wrap.atCoreC', cut.wrap?.atCoreC, 40, 98],
  ['rest.leastS', cut.rest.leastS, 0, 86_400],
  ['rest.mostS', cut.rest.mostS, cut.rest.leastS, 86_400],
  ['hold.leastS', cut.hold.leastS, 0, 86_400],
  ['hold.mostS', cut.hold.mostS, cut.hold.leastS, 86_400],
  ['bearsWPerM2', cut.bearsWPerM2, 0, 20_000],
  ['areaM2PerKg', cut.areaM2PerKg, 0.002, 0.2],
  ['yieldFrac', cut.yieldFrac, 0.2, 1],
  ['portionKg', cut.portionKg, 0.01, 3],
  ['usualKg', cut.usualKg, 0.02, 300],
];

/**
 * A cut as somebody typed it, held to what the model can reckon with: every number in its range, a done rule that can be met,
 * a wrap before done, a composition that is whole within a tenth.
 *
 * @returns the cut, or the first thing to put right with the range it has to lie in
 */
export function checkedCut(cut: Cut): Result<Cut, CutRefusal> {
  for (const [field, value, min, max] of rowsOf(cut))
    if (value !== undefined && !(value >= min && value <= max)) return refuse({ code: 'cut-value-out-of-range', field, value, min, max });
  const { coreTempC, tenderHoursAt90 } = cut.done;
  if (coreTempC === undefined && tenderHoursAt90 === undefined) return refuse({ code: 'done-rule-missing' });
  if (cut.wrap && coreTempC !== undefined && cut.wrap.atCoreC >= coreTempC) return refuse({ code: 'wrap-after-done', wrapC: cut.wrap.atCoreC, doneC: coreTempC });
  const { waterFrac, proteinFrac, fatFrac, ashFrac } = cut.composition;
  const sumFrac = waterFrac + proteinFrac + fatFrac + ashFrac;
  return Math.abs(sumFrac - 1) > 0.1 ? refuse({ code: 'composition-not-whole', sumFrac }) : ok(cut);
}

/** Half the thickest section of a piece, m: `L = L_ref (m / m_ref)^p`. Source: geometry. @param pieceKg above 0 */
export const halfThicknessM = (body: Body, pieceKg: number) => body.halfThicknessM * (pieceKg / body.referenceKg) ** body.thicknessPower;
