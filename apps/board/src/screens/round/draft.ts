import type { AirSetView, PitView, RecordCheck } from '@stokehold/domain/contract';
import type { Said } from '../../live/use-command.js';

export type Put = 'rake' | 'one' | 'two';

/** What somebody has said of a fire so far; kept on the device until it is recorded, so that a killed page loses nothing. */
export interface Draft {
  readonly bed?: RecordCheck['bed'] | undefined;
  readonly left?: RecordCheck['left'] | undefined;
  readonly put?: Put | undefined;
  readonly size?: RecordCheck['size'] | undefined;
  readonly fireEndTempC?: number | undefined;
  readonly stackEndTempC?: number | undefined;
  readonly smoke?: 'clean' | 'dirty' | undefined;
  /** How the air was left; without it, as it was. */
  readonly air?: AirSetView | undefined;
  readonly note?: string | undefined;
}

export type Missing = 'needBed' | 'needLeft' | 'needPut';

/** What is still to be said before the check can be recorded; undefined when all is there. */
export function missingIn(draft: Draft): Missing | undefined {
  if (!draft.bed) return 'needBed';
  if (!draft.left) return 'needLeft';
  return draft.put ? undefined : 'needPut';
}

const SPLITS: Readonly<Record<Put, number>> = { rake: 0, one: 1, two: 2 };

/** The check that a full draft stands for; undefined while something is missing. */
export function checkOf(draft: Draft, pitId: RecordCheck['pitId'], seenAt: string): Said<'recordCheck'> | undefined {
  const { bed, left, put, size, fireEndTempC, stackEndTempC, smoke, air, note } = draft;
  if (!bed || !left || !put) return undefined;
  return {
    pitId, seenAt, bed, left,
    raked: true,
    splits: SPLITS[put],
    size: size ?? 'standard',
    ...(fireEndTempC !== undefined && { fireEndTempC }),
    ...(stackEndTempC !== undefined && { stackEndTempC }),
    ...(smoke && { smoke }),
    ...(air && { air }),
    ...(note?.trim() && { note: note.trim() }),
  };
}

/** Back from a check that was refused to the draft it came from, to be corrected. */
export function draftOf(check: Said<'recordCheck'>): Draft {
  const { bed, left, splits, size, fireEndTempC, stackEndTempC, smoke, air, note } = check;
  return { bed, left, put: splits === 0 ? 'rake' : splits === 1 ? 'one' : 'two', size, fireEndTempC, stackEndTempC, smoke, air, note };
}

/** What the estimate believes at the two ends, °C; where a reading by hand begins. */
export function believedEnds(view: PitView): { readonly fire: number; readonly stack: number } | undefined {
  const zones = view.fire?.zoneTempC;
  const fire = zones?.[0];
  const stack = zones?.at(-1);
  return fire === undefined || stack === undefined ? undefined : { fire, stack };
}

const KEPT = 'drafts';
/** What was seen of a fire longer ago than this is no longer how the fire is. */
const FRESH_MS = 20 * 60_000;

interface KeptDraft {
  readonly draft: Draft;
  readonly atMs: number;
}

/** Drafts kept on the device and still fresh, by fire; unreadable ones count as none. */
function freshDrafts(nowMs: number): Readonly<Record<string, KeptDraft>> {
  try {
    const all = JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Record<string, KeptDraft>;
    return Object.fromEntries(Object.entries(all).filter(([, { atMs }]) => nowMs - atMs < FRESH_MS));
  } catch {
    return {};
  }
}

export const keptDraft = (pitId: string): Draft => freshDrafts(Date.now())[pitId]?.draft ?? {};

/** The fire that somebody was in the midst of recording when the page went away. */
export const fireInHand = (): string | undefined =>
  Object.entries(freshDrafts(Date.now())).sort(([, a], [, b]) => b.atMs - a.atMs)[0]?.[0];

/** Keeps one draft a fire; an empty one is forgotten. Where the device has no room the draft lives as long as the page. */
export function keepDraft(pitId: string, draft: Draft): void {
  const { [pitId]: _old, ...others } = freshDrafts(Date.now());
  try {
    localStorage.setItem(KEPT, JSON.stringify(Object.keys(draft).length ? { ...others, [pitId]: { draft, atMs: Date.now() } } : others));
  } catch {
    return;
  }
}
