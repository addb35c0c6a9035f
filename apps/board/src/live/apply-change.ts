import type { LiveChange, PitView, YardState } from '@stokehold/domain/contract';

function withPits(old: readonly PitView[], changed: readonly PitView[] | undefined, gone: readonly string[] | undefined): PitView[] {
  if (!changed && !gone) return old as PitView[];
  const byId = new Map((changed ?? []).map((view) => [view.pit.id as string, view]));
  const known = new Set(old.map((view) => view.pit.id as string));
  const kept = old.filter((view) => !gone?.includes(view.pit.id)).map((view) => byId.get(view.pit.id) ?? view);
  return [...kept, ...(changed ?? []).filter((view) => !known.has(view.pit.id))];
}

/**
 * The state after a live change. A change that is already in the state leaves it as it is; one that comes after a
 * missing number is a 'gap': the board must fetch the whole state.
 */
export function applyChange(state: YardState, change: LiveChange): YardState | 'gap' {
  if (change.seq <= state.seq) return state;
  if (change.seq !== state.seq + 1) return 'gap';
  const slices = Object.fromEntries(Object.entries(change.changed).filter(([, slice]) => slice !== undefined));
  return {
    ...state,
    ...slices,
    pits: withPits(state.pits, change.changed.pits, change.pitsGone),
    seq: change.seq,
    clock: change.clock,
  };
}
