import type { CutSettings } from '@stokehold/domain/contract';
import type { FormReading } from '../../parts/form-reading.js';
import type { ShownAs } from '../../units/scale.js';

export type CutNumber = 'doneTemp' | 'tender' | 'wrapTemp' | 'restMin' | 'holdMax' | 'usual' | 'thickness' | 'yield' | 'portion';
interface CutField {
  readonly name: CutNumber;
  readonly as?: ShownAs;
  readonly min: number;
  readonly max: number;
  /** May be left empty. */
  readonly may?: boolean;
  readonly of: (cut: CutSettings) => number | null;
}

/** The numbers of a cut as a form shows them: SI where they have a scale, else as people say them. */
export const CUT_NUMBERS: readonly CutField[] = [
  { name: 'doneTemp', as: 'temp', min: 50, max: 99, may: true, of: ({ done }) => done.coreTempC },
  { name: 'tender', min: 0.05, max: 10, may: true, of: ({ done }) => done.tenderHoursAt90 },
  { name: 'wrapTemp', as: 'temp', min: 40, max: 98, may: true, of: ({ wrap }) => wrap?.atCoreC ?? null },
  { name: 'restMin', min: 0, max: 1440, of: ({ rest }) => rest.leastS / 60 },
  { name: 'holdMax', min: 0, max: 24, of: ({ hold }) => hold.mostS / 3600 },
  { name: 'usual', as: 'mass', min: 0.02, max: 300, of: ({ usualKg }) => usualKg },
  { name: 'thickness', as: 'length', min: 0.008, max: 0.5, of: (cut) => usualThicknessM(cut) },
  { name: 'yield', min: 20, max: 100, of: ({ yieldFrac }) => Math.round(1000 * yieldFrac) / 10 },
  { name: 'portion', as: 'mass', min: 0.01, max: 3, of: ({ portionKg }) => portionKg },
];

/** Thickest section of a piece of the usual weight. */
export const usualThicknessM = ({ body, usualKg }: CutSettings) => 2 * body.halfThicknessM * (usualKg / body.referenceKg) ** body.thicknessPower;

/** What stands in the fields at first. */
export const typedOf = (cut: CutSettings, shown: (as: ShownAs, si: number) => string): Record<string, string> =>
  Object.fromEntries(CUT_NUMBERS.map(({ name, as, of }) => {
    const value = of(cut);
    return [name, value === null ? '' : as ? shown(as, value) : String(Number(value.toFixed(2)))];
  }));

interface Typed {
  readonly typed: Readonly<Record<string, string>>;
  readonly wrapIn: 'none' | 'foil' | 'paper';
  readonly source: string;
}

/** The cut as typed; what was left as it was shown stays to the last digit. Undefined, with the faults in `reading`, where it cannot be read. */
export function changedCut(cut: CutSettings, { typed, wrapIn, source }: Typed, reading: FormReading): CutSettings | undefined {
  const read = Object.fromEntries(CUT_NUMBERS.filter(({ name }) => name !== 'wrapTemp' || wrapIn !== 'none').map(({ name, as, min, max, may, of }) => {
    const wanted = { ...(as && { as }), min, max, was: of(cut) ?? undefined };
    const text = typed[name] ?? '';
    // A scale allows half a unit at its ends; a weight of 0 is none for all that.
    if (as === 'mass' || as === 'length') reading.number(name, text, { min: 0.01, max: 1000 });
    if (reading.wrongs[name]) return [name, undefined];
    return [name, may && name !== 'wrapTemp' ? reading.optionalNumber(name, text, wanted) : reading.number(name, text, wanted)];
  })) as Record<CutNumber, number | undefined>;
  const where = reading.text('source', source, 300);
  const { restMin, holdMax, usual, thickness, yield: yielded, portion } = read;
  if (!reading.good || where === undefined || restMin === undefined || holdMax === undefined || usual === undefined || thickness === undefined || yielded === undefined || portion === undefined) return undefined;
  const leastS = Math.round(restMin * 60);
  const mostS = Math.round(holdMax * 3600);
  return {
    ...cut, source: where, usualKg: usual, portionKg: portion, yieldFrac: yielded / 100,
    body: thickness === usualThicknessM(cut) && usual === cut.usualKg ? cut.body : { ...cut.body, halfThicknessM: thickness / 2, referenceKg: usual },
    done: { coreTempC: read.doneTemp ?? null, tenderHoursAt90: read.tender ?? null },
    wrap: wrapIn === 'none' ? null : { kind: wrapIn, atCoreC: read.wrapTemp ?? 0 },
    rest: { leastS, mostS: Math.max(leastS, cut.rest.mostS) },
    hold: { leastS: Math.min(cut.hold.leastS, mostS), mostS },
  };
}
