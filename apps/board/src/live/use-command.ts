import type { RouteName } from '@stokehold/domain/contract';
import ways from 'contract:ways';
import { useRef, useState } from 'react';
import { ask, type Input, type Reply } from './ask.js';
import { commandKey } from './command-key.js';
import { deviceNow } from './device-clock.js';
import { NoAnswer, Refused } from './refused.js';
import { useMe } from './use-me.js';

/** What a screen says of a command: its key and the device's clock are added on the way. */
export type Said<N extends RouteName> = Omit<Input<N>, 'key' | 'sentAt'>;

/** The whole input of a route, with a key and the device's clock where the route has them. */
export function withKey<N extends RouteName>(name: N, said: Said<N>, key: string, practice: boolean): Input<N> {
  const { wants } = ways[name];
  return {
    ...said,
    ...(wants.includes('key') && { key }),
    ...(wants.includes('sentAt') && { sentAt: deviceNow(practice) }),
  } as unknown as Input<N>;
}

export interface Command<N extends RouteName> {
  /** Resolves to the reply, or to undefined when it was refused or no answer came; `failed` then says why. */
  readonly send: (said: Said<N>) => Promise<Reply<N> | undefined>;
  readonly sending: boolean;
  readonly failed: Refused | NoAnswer | undefined;
  readonly forget: () => void;
}

/** A command of a desk screen. The same thing sent again after no answer goes under its first key, so it is done once. */
export function useCommand<N extends RouteName>(name: N): Command<N> {
  const { me } = useMe();
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState<Refused | NoAnswer>();
  const unanswered = useRef<{ said: string; key: string }>(undefined);

  const send = async (said: Said<N>) => {
    const text = JSON.stringify(said);
    const key = unanswered.current?.said === text ? unanswered.current.key : commandKey();
    unanswered.current = { said: text, key };
    setSending(true);
    setFailed(undefined);
    try {
      const reply = await ask(name, () => withKey(name, said, key, me?.yard.practice ?? false));
      unanswered.current = undefined;
      return reply;
    } catch (error) {
      if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
      if (error instanceof Refused) unanswered.current = undefined;
      setFailed(error);
      return undefined;
    } finally {
      setSending(false);
    }
  };
  return { send, sending, failed, forget: () => setFailed(undefined) };
}
