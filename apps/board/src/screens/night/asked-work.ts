import type { Supposition, Work } from '@stokehold/domain/contract';
import { createContext, useContext } from 'react';

/** What somebody asks about by touching the picture: a piece of work, or something that might happen. */
export interface Asking {
  readonly work: Work | undefined;
  readonly askWork: (work: Work | undefined) => void;
  readonly suppose: (what: Supposition) => void;
}
export const AskingContext = createContext<Asking>({ work: undefined, askWork: () => undefined, suppose: () => undefined });
export const useAsking = (): Asking => useContext(AskingContext);

export const sameWork = (one: Work | undefined, other: Work | null): boolean => JSON.stringify(one) === JSON.stringify(other ?? undefined);
/** A piece of work as it stands in the address of the question why. */
export const addressOf = (work: Work): { readonly kind: Work['kind']; readonly id: string; readonly nth: number } =>
  work.kind === 'check' ? { kind: work.kind, id: work.pitId, nth: work.nth } : { kind: work.kind, id: work.kind === 'task' ? work.taskId : work.breakId, nth: 1 };
