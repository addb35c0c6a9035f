declare const unit: unique symbol;

/**
 * A plain number or string when it runs; the compiler remembers the unit or the kind of thing.
 * Only where two of them look alike and a mix-up hurts: everything else carries its unit in its name.
 */
export type Quantity<U extends string> = number & { readonly [unit]: U };
export type Named<U extends string> = string & { readonly [unit]: U };

export type Celsius = Quantity<'degree Celsius'>;
/** Water per dry mass, a fraction: what a pin meter shows, over 100. */
export type DryBasis = Quantity<'kg water / kg dry wood'>;
/** Water per wet mass, a fraction: what fuel standards speak of. */
export type WetBasis = Quantity<'kg water / kg wet wood'>;
/** Whole seconds since 1970-01-01T00:00:00Z. */
export type EpochS = Quantity<'seconds since 1970, UTC'>;
/** Whole cents of the yard's currency. */
export type Cents = Quantity<'cents'>;

export type YardId = Named<'yard'>;
export type PitId = Named<'pit'>;
export type PersonId = Named<'person'>;
export type DeviceId = Named<'device'>;
export type ShiftId = Named<'shift'>;
export type LotId = Named<'lot'>;
export type CookId = Named<'cook'>;
export type ServiceId = Named<'service'>;
export type TaskId = Named<'task'>;
export type ProbeId = Named<'probe'>;

export const celsius = (value: number) => value as Celsius;
export const dryBasis = (value: number) => value as DryBasis;
export const wetBasis = (value: number) => value as WetBasis;
export const cents = (value: number) => value as Cents;

/** 0.25 kg per dry kilogram is 0.20 per wet kilogram. */
export const toWetBasis = (moisture: DryBasis) => (moisture / (1 + moisture)) as WetBasis;
/** 0.20 kg per wet kilogram is 0.25 per dry kilogram. */
export const toDryBasis = (moisture: WetBasis) => (moisture / (1 - moisture)) as DryBasis;
