import type { Place } from '@stokehold/domain/contract';
import { getTimes } from 'suncalc';

export type Theme = 'night' | 'day';

const DAY_MS = 86_400_000;

/** The suns of yesterday, today and tomorrow: a day of the sun does not begin at midnight. */
const sunsAround = ({ latitudeDeg, longitudeDeg }: Place, nowMs: number) => [-1, 0, 1].map((days) => getTimes(new Date(nowMs + days * DAY_MS), latitudeDeg, longitudeDeg));

/** Whether the sun's upper edge stands over the horizon, as almanacs print sunrise and sunset. */
export function sunIsUp(place: Place, nowMs: number): boolean {
  const suns = sunsAround(place, nowMs);
  return suns[1]?.alwaysUp === true || suns.some(({ sunrise, sunset }) => sunrise && sunset && sunrise.getTime() <= nowMs && nowMs < sunset.getTime());
}

/** When the sun next rises or sets there; a day ahead where it does neither, near the poles. */
function nextTurnMs(place: Place, nowMs: number): number {
  const turns = sunsAround(place, nowMs).flatMap(({ sunrise, sunset }) => [sunrise, sunset].flatMap((at) => (at ? [at.getTime()] : [])));
  return Math.min(nowMs + DAY_MS, ...turns.filter((at) => at > nowMs));
}

/** A light chosen by hand, and until when it holds; null for good. */
export interface ByHand {
  readonly theme: Theme;
  readonly untilMs: number | null;
}

/** Day while the sun is up over the yard, night while it is down; by hand until it next rises or sets. Where nobody said where the yard lies: night, or as chosen. */
export function themeAt(nowMs: number, place: Place | undefined, byHand: ByHand | undefined): Theme {
  if (byHand && (byHand.untilMs === null || nowMs < byHand.untilMs)) return byHand.theme;
  return place && sunIsUp(place, nowMs) ? 'day' : 'night';
}

const KEPT = 'theme';

/** What this device was told by hand; a choice kept by an older board holds for good. */
export function keptByHand(): ByHand | undefined {
  const kept = localStorage.getItem(KEPT);
  const [theme, until] = kept?.split(' ') ?? [];
  if (theme !== 'night' && theme !== 'day') return undefined;
  return { theme, untilMs: until ? Number(until) : null };
}

export function keepByHand(theme: Theme, nowMs: number, place: Place | undefined): void {
  localStorage.setItem(KEPT, place ? `${theme} ${nextTurnMs(place, nowMs)}` : theme);
}

export const shine = (theme: Theme): void => void (document.documentElement.dataset['theme'] = theme);
