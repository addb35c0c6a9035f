import { useQuery } from '@tanstack/react-query';
import type { Device } from '@stokehold/domain/contract';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';

export const DEVICES = ['devices'] as const;
const ASK_AGAIN_MS = 10_000;

/** The devices of the yard, asked for again now and then: one that is enrolled elsewhere appears by itself. */
export const useDevices = (): readonly Device[] | undefined =>
  useQuery({ queryKey: DEVICES, queryFn: () => ask('devices', {}), refetchInterval: ASK_AGAIN_MS, retry: (_count, error) => passes(error) }).data;
