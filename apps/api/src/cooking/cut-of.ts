import type { CookView, CutSettings, FoodLimits } from '@stokehold/domain/contract';
import { type Cut, EDITIONS, type LimitSet, type OwnLimits, STARTING_CUTS, withOwn } from '@stokehold/domain/food';

/** A cut as the contract carries it: what is absent is null. */
export const settingsOf = ({ wrap, done, ...cut }: Cut): CutSettings => ({
  ...cut, done: { coreTempC: done.coreTempC ?? null, tenderHoursAt90: done.tenderHoursAt90 ?? null }, wrap: wrap ?? null,
});
/** And back. */
export const cutOf = ({ wrap, done, ...cut }: CutSettings): Cut => ({
  ...cut, done: { ...(done.coreTempC !== null && { coreTempC: done.coreTempC }), ...(done.tenderHoursAt90 !== null && { tenderHoursAt90: done.tenderHoursAt90 }) }, ...(wrap && { wrap }),
});

/** The starting cuts, with the yard's own in their place or beside them, by name. */
export function cutsWith(own: readonly CutSettings[]): CutSettings[] {
  const starting = STARTING_CUTS.map(settingsOf).filter(({ code }) => !own.some((cut) => cut.code === code));
  return [...starting, ...own].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.code < b.code ? -1 : 1));
}

const plain = (text: string) => text.trim().toLowerCase();
/** The cut that a cook's name means: its name or its code. */
export const cutFor = (cook: Pick<CookView, 'cut'>, cuts: readonly CutSettings[]): CutSettings | undefined =>
  cuts.find(({ name, code }) => plain(name) === plain(cook.cut) || code === plain(cook.cut).replace(/\s+/g, '-'));

/** The usual setting of a yard that has chosen nothing: the latest edition, no own values. */
export const USUAL_LIMITS: FoodLimits = {
  edition: 'food-code-2022',
  own: { hotHoldC: null, coldHoldC: null, poultryC: null, groundC: null, roastC: null, reheatC: null, coolingFirstS: null, coolingTotalS: null, comeUpS: null },
  probeErrorK: 1,
};
/** The limits a yard is held to: the published set it chose, with its own stricter values. */
export function limitsOf(limits: FoodLimits): LimitSet {
  const set = withOwn(editionOf(limits), ownOf(limits));
  return set.ok ? set.value : editionOf(limits);
}
export const editionOf = ({ edition }: FoodLimits) => EDITIONS[edition];

/** A yard's own values without those it leaves to the code. */
export function ownOf({ own }: FoodLimits): OwnLimits {
  const { poultryC, groundC, roastC, ...rest } = own;
  const given = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== null)) as OwnLimits;
  const cookingC = Object.fromEntries(Object.entries({ poultry: poultryC, ground: groundC, roast: roastC }).filter(([, value]) => value !== null)) as NonNullable<OwnLimits['cookingC']>;
  return Object.keys(cookingC).length > 0 ? { ...given, cookingC } : given;
}
