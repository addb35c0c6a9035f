import type { ShownHour } from './load-chart.js';

const alike = (one: ShownHour, other: ShownHour): boolean =>
  one.missingPeople === other.missingPeople && (one.skill ?? null) === (other.skill ?? null) && one.mend?.code === other.mend?.code;

/** The hours that fail, in order; hours that follow each other and lack the same are one stretch. */
export function failingStretches(hours: readonly ShownHour[]): readonly ShownHour[] {
  const stretches: ShownHour[] = [];
  for (const hour of hours.filter(({ fails }) => fails).sort((a, b) => a.fromAt - b.fromAt)) {
    const before = stretches.findIndex((one) => one.untilAt === hour.fromAt && alike(one, hour));
    const last = stretches[before];
    if (last) stretches[before] = { ...last, untilAt: hour.untilAt };
    else stretches.push(hour);
  }
  return stretches;
}
