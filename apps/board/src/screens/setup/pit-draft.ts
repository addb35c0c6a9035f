import type { PitId, ProbeId } from '@stokehold/domain/quantity';
import type { PitSettings } from '@stokehold/domain/contract';
import type { FormReading } from '../../parts/form-reading.js';
import type { Figures } from '../../units/figures.js';
import type { ShownAs } from '../../units/scale.js';

// A pit as it is typed, and back.

/** The sizes of a pit, in the order in which one measures them; limits as the contract has them, SI. */
export const SIZES = [
  { field: 'chamberLengthM', as: 'length', min: 0.6, max: 12 },
  { field: 'chamberDiameterM', as: 'length', min: 0.3, max: 2.5 },
  { field: 'fireboxLengthM', as: 'length', min: 0.3, max: 2 },
  { field: 'fireboxDiameterM', as: 'length', min: 0.3, max: 2 },
  { field: 'steelThicknessM', as: 'steel', min: 0.001, max: 0.03 },
  { field: 'stackHeightM', as: 'length', min: 0.3, max: 5 },
  { field: 'stackDiameterM', as: 'length', min: 0.05, max: 0.6 },
] as const satisfies readonly { readonly field: keyof PitSettings; readonly as: ShownAs; readonly min: number; readonly max: number }[];
export type Size = (typeof SIZES)[number]['field'];

export interface DraftProbe {
  readonly id: ProbeId;
  readonly name: string;
  readonly zone: number;
}
export interface PitDraft {
  readonly name: string;
  readonly fireEnd: 'left' | 'right';
  readonly heading: string;
  readonly sizes: Readonly<Record<Size, string>>;
  /** Lengths of the zones from the fire end. */
  readonly zones: readonly string[];
  readonly probes: readonly DraftProbe[];
  readonly low: string;
  readonly high: string;
  readonly retired: boolean;
}

/** A mid-size pit, to be changed into the one that stands there; its band is a usual one. Common practice, no source. */
const MID_SIZE: Omit<PitSettings, 'id' | 'name' | 'xM' | 'yM'> = {
  fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.4, chamberDiameterM: 0.76, fireboxLengthM: 0.6, fireboxDiameterM: 0.6,
  steelThicknessM: 0.00635, stackHeightM: 1.2, stackDiameterM: 0.15, zones: [{ lengthM: 0.8 }, { lengthM: 0.8 }, { lengthM: 0.8 }], probes: [],
  band: { lowC: 121, highC: 127 }, retired: false,
};
export const freshPit = (id: PitId, place: { readonly xM: number; readonly yM: number }): PitSettings => ({ ...MID_SIZE, ...place, id, name: '' });

export function draftOfPit(pit: PitSettings, figures: Figures): PitDraft {
  const shown = (as: ShownAs, si: number) => String(figures.shown(as, si));
  return {
    name: pit.name,
    fireEnd: pit.fireEnd,
    heading: String(Math.round(pit.fireEndHeadingDeg)),
    sizes: Object.fromEntries(SIZES.map(({ field, as }) => [field, shown(as, pit[field])])) as Record<Size, string>,
    zones: pit.zones.map(({ lengthM }) => shown('length', lengthM)),
    probes: pit.probes,
    low: shown('temp', pit.band.lowC),
    high: shown('temp', pit.band.highC),
    retired: pit.retired,
  };
}

/** The pit that was typed; undefined where a field cannot be read, and `reading` then knows which. */
export function pitOfDraft(draft: PitDraft, was: PitSettings, reading: FormReading): PitSettings | undefined {
  const name = reading.text('name', draft.name);
  const heading = reading.number('heading', draft.heading, { min: 0, max: 359 });
  const sizes = SIZES.map(({ field, as, min, max }) => [field, reading.number(field, draft.sizes[field], { as, min, max, was: was[field] })] as const);
  const zones = draft.zones.map((typed, n) => reading.number(`zone.${n}`, typed, { as: 'length', min: 0.1, max: 5, was: was.zones[n]?.lengthM }));
  const probes = draft.probes.map((probe) => ({ ...probe, name: reading.text(`probe.${probe.id}`, probe.name) ?? '' }));
  const lowC = reading.number('low', draft.low, { as: 'temp', min: 60, max: 250, was: was.band.lowC });
  const highC = reading.number('high', draft.high, { as: 'temp', min: lowC === undefined ? 60 : Math.min(260, lowC + 1), max: 260, was: was.band.highC });
  if (!reading.good || name === undefined || heading === undefined || lowC === undefined || highC === undefined) return undefined;
  return {
    ...was, ...(Object.fromEntries(sizes) as Record<Size, number>), name,
    fireEnd: draft.fireEnd,
    fireEndHeadingDeg: heading === Math.round(was.fireEndHeadingDeg) ? was.fireEndHeadingDeg : heading,
    zones: zones.map((lengthM) => ({ lengthM: lengthM ?? 0 })),
    probes: probes.map((probe) => ({ ...probe, zone: Math.min(probe.zone, zones.length - 1) })),
    band: { lowC, highC },
    retired: draft.retired,
  };
}
