import type { BuyLot, LotSettings } from '@stokehold/domain/contract';
import type { Cents, DryBasis, LotId } from '@stokehold/domain/quantity';
import type { FormReading, TypedWall } from '../../parts/form-reading.js';

/** A bought lot as it stands in the fields of its form. */
export interface LotDraft {
  readonly name: string;
  readonly length: string;
  readonly thickness: string;
  readonly percent: string;
  readonly pieces: string;
  readonly price: string;
  /** What the bill and the scale say, where somebody knows it. */
  readonly cords: string;
  readonly weight: string;
}
export const EMPTY_LOT: LotDraft = { name: '', length: '', thickness: '', percent: '', pieces: '', price: '', cords: '', weight: '' };

/** The command of a draft; undefined, with what is wrong kept by the reading, where a field cannot be read. */
export function lotOf(draft: LotDraft, { id, species, bought }: { readonly id: LotId; readonly species: LotSettings['species']; readonly bought: TypedWall }, reading: FormReading): Omit<BuyLot, 'key'> | undefined {
  const name = reading.text('name', draft.name);
  const pieces = reading.number('pieces', draft.pieces, { min: 1, max: 5000, whole: true });
  const lengthM = reading.number('length', draft.length, { as: 'length', min: 0.05, max: 1.5 });
  const thicknessM = reading.number('thickness', draft.thickness, { as: 'length', min: 0.02, max: 0.4 });
  const percent = reading.number('percent', draft.percent, { min: 2, max: 120 });
  const price = reading.cents('price', draft.price, 100_000_000);
  const boughtAt = reading.instant('bought', bought);
  const cords = reading.optionalNumber('cords', draft.cords, { min: 0.01, max: 1000 });
  const massKg = reading.optionalNumber('weight', draft.weight, { as: 'mass', min: 1, max: 1e6 });
  if (name === undefined || pieces === undefined || lengthM === undefined || thicknessM === undefined || percent === undefined || price === undefined || boughtAt === undefined || !reading.good) return undefined;
  const also = [...(cords === undefined ? [] : [{ by: 'cords' as const, cords }]), ...(massKg === undefined ? [] : [{ by: 'weight' as const, massKg }])];
  return { lot: { id, name, species, lengthM, thicknessM, moisture: (percent / 100) as DryBasis, boughtAt, priceCents: price as Cents }, pieces, ...(also.length > 0 && { also }) };
}
