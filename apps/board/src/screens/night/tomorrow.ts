import { fromIso } from '@stokehold/domain/quantity';
import type { RosterView, ShiftView } from '@stokehold/domain/contract';

/** The night to show first: the next one that is to come, else the one that runs. */
export function firstShown(shifts: readonly ShiftView[], nowS: number): string | undefined {
  const inOrder = [...shifts].sort((one, other) => one.startsAt.localeCompare(other.startsAt));
  return (inOrder.find(({ startsAt }) => fromIso(startsAt) > nowS) ?? inOrder.at(-1))?.id;
}

/** The most people that any hour needs, from when, and without how many a fire passes latest safe. */
export function mostNeeded({ hours }: Pick<RosterView, 'hours'>): { readonly needed: number; readonly from: string; readonly fewest: number } | undefined {
  const [first, ...rest] = hours;
  if (!first) return undefined;
  const worst = rest.reduce((most, hour) => (hour.needed > most.needed ? hour : most), first);
  return { needed: worst.needed, from: worst.fromAt, fewest: Math.max(...hours.map(({ fewest }) => fewest)) };
}

/** The failing hours as the load's sentences say them: for everybody, or for the one skill that is missing. */
export const failingHours = ({ hours }: Pick<RosterView, 'hours'>) =>
  hours.filter(({ fails }) => fails).map(({ fromAt, untilAt, loadFrac, missingPeople, mend, bySkill, needed, present }) => {
    const lacking = present >= needed ? bySkill.find((one) => one.present < one.needed)?.skill : undefined;
    return { fromAt: fromIso(fromAt), untilAt: fromIso(untilAt), loadFrac, fails: true, missingPeople: Math.max(1, missingPeople), mend: { code: mend }, skill: lacking ?? null };
  });
