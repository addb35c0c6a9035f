import type { ShiftDraft } from './shift-draft.js';

// A night planned for tomorrow is not in the live state yet: this device remembers it, so that it can be opened and changed again.

const nameOf = (yardId: string) => `night-draft-1-${yardId}`;

export function keepDraft(yardId: string, draft: ShiftDraft): void {
  localStorage.setItem(nameOf(yardId), JSON.stringify(draft));
}
export function keptDraft(yardId: string): ShiftDraft | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(nameOf(yardId)) ?? 'null');
    return kept ? (kept as ShiftDraft) : undefined;
  } catch {
    return undefined;
  }
}
export const forgetDraft = (yardId: string): void => localStorage.removeItem(nameOf(yardId));
