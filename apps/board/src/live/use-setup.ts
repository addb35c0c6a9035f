import { useQuery, useQueryClient } from '@tanstack/react-query';
import { MAY, type Permission, type Setup } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { passes } from './refused.js';
import { useMe } from './use-me.js';

const SETUP = ['setup'] as const;

/** Whether the person who is signed in may do this. */
export function useMay(permission: Permission): boolean {
  const { me } = useMe();
  return me?.person ? MAY[me.person.role].includes(permission) : false;
}

/** The yard as it is set up; undefined until it is there, and always for those who may not plan. */
export function useSetup(): Setup | undefined {
  const mayPlan = useMay('plan');
  const query = useQuery({ queryKey: SETUP, queryFn: () => ask('setup', {}), enabled: mayPlan, retry: (_count, error) => passes(error), retryDelay: 2000 });
  return query.data;
}

/** Fetches the setup anew, after somebody changed it here. */
export function useSetupChanged(): () => Promise<void> {
  const client = useQueryClient();
  return () => client.invalidateQueries({ queryKey: SETUP });
}
