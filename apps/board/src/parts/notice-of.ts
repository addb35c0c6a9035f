import type { PartView } from '@stokehold/domain/contract';

export type HouseNoticeOf = { readonly kind: 'down'; readonly count: number } | { readonly kind: 'disk'; readonly usedFrac: number; readonly leftBytes: number };

/** What of the house cannot wait until somebody looks at its status: what does not work, and a disk from 90 % on. Held to notice-of.test.ts */
export function noticeOf(parts: readonly PartView[]): HouseNoticeOf | undefined {
  const down = parts.filter(({ state }) => state === 'down').length;
  if (down > 0) return { kind: 'down', count: down };
  const disk = parts.find(({ finding }) => finding === 'disk-nearly-full')?.figures;
  return disk && { kind: 'disk', usedFrac: disk.usedFrac ?? 0.9, leftBytes: disk.leftBytes ?? 0 };
}
