import type { EpochS, PersonId, PitId } from '../quantity/index.js';

/** A fire that goes from one crew to the next, with whoever the plan gives its next check. */
export interface FireToHand {
  readonly pitId: PitId;
  readonly dueAt: EpochS;
  readonly latestSafeAt: EpochS;
  readonly planned?: { readonly personId: PersonId; readonly startsAt: EpochS };
}

/** Who hands over to whom, and until when the crew that hands over is there. */
export interface Handing {
  readonly until: EpochS;
  readonly by: PersonId | null;
  readonly to: PersonId | null;
  /** Those of the next shift who look after fires, in the order in which they come. */
  readonly nextCrew: readonly PersonId[];
}

/** An open check with its owner on one side of the handover. */
export interface OwnedCheck {
  readonly pitId: PitId;
  readonly dueAt: EpochS;
  readonly latestSafeAt: EpochS;
  readonly side: 'this-crew' | 'next-crew';
  /** Nobody by name only where no next shift is planned: then it is the next crew's as a whole. */
  readonly ownerId: PersonId | null;
}

/**
 * Gives each open check an owner on one side: whoever the plan gives it, if they begin before the crew leaves; else, when it is due
 * before that, the one who signs; else the next crew, by name the one handed to or the first who comes.
 *
 * @param fires    the fires that burn, each with the window of its next check
 * @param handing  who hands over to whom
 * @returns one a fire, by latest safe. Held to libs/domain/shift/handover.test.ts
 */
export function openChecks(fires: readonly FireToHand[], handing: Handing): readonly OwnedCheck[] {
  return fires
    .map(({ pitId, dueAt, latestSafeAt, planned }): OwnedCheck => ({ pitId, dueAt, latestSafeAt, ...ownerOf(dueAt, planned, handing) }))
    .sort((one, other) => one.latestSafeAt - other.latestSafeAt || (one.pitId < other.pitId ? -1 : 1));
}

function ownerOf(dueAt: EpochS, planned: FireToHand['planned'], { until, by, to, nextCrew }: Handing): Pick<OwnedCheck, 'side' | 'ownerId'> {
  if (planned && planned.startsAt < until) return { side: 'this-crew', ownerId: planned.personId };
  if (dueAt < until && by !== null) return { side: 'this-crew', ownerId: by };
  return { side: 'next-crew', ownerId: to ?? nextCrew[0] ?? null };
}
