import type { QueryClient } from '@tanstack/react-query';
import { LIVE, type LiveBeat, type LiveChange, type YardState } from '@stokehold/domain/contract';
import type { Socket } from 'socket.io-client';
import { applyChange } from './apply-change.js';
import { faultAtHand, told } from './ask.js';
import { hear } from './heard.js';
import { STATE } from './query-keys.js';

const AGAIN_MS = 3000;

/**
 * Keeps the state in the cache up to date from the live push, until the returned function is called. What speaks with the
 * server is fetched only now, after the first picture; where that fails, again and again.
 */
export function openFeed(client: QueryClient): () => void {
  let leave = (): void => undefined;
  let left = false;
  const open = async () => {
    const { io } = await import('./socket.js');
    if (!left) leave = listen(io({ path: LIVE.path, transports: ['websocket', 'polling'], reconnectionDelayMax: AGAIN_MS }), client);
  };
  const tryToOpen = () => {
    open().catch(() => {
      if (left) return;
      const timer = setTimeout(tryToOpen, AGAIN_MS);
      leave = () => clearTimeout(timer);
    });
  };
  tryToOpen();
  return () => {
    left = true;
    leave();
  };
}

/** A missing number, a beat that is ahead twice running, or a new connection: the whole state is fetched again. */
function listen(socket: Socket, client: QueryClient): () => void {
  const refetch = () => void client.invalidateQueries({ queryKey: STATE });
  let beatsAhead = 0;
  let connectedBefore = false;

  socket.on('connect', () => {
    if (connectedBefore) refetch();
    connectedBefore = true;
  });
  socket.on(LIVE.change, (message: unknown) => {
    const change = told<LiveChange>('a change', faultAtHand('change'), message);
    hear(change.clock);
    const state = client.getQueryData<YardState>(STATE);
    if (!state) return;
    const next = applyChange(state, change);
    if (next === 'gap') refetch();
    else client.setQueryData(STATE, next);
  });
  socket.on(LIVE.beat, (message: unknown) => {
    const beat = told<LiveBeat>('a beat', faultAtHand('beat'), message);
    hear(beat.clock);
    const state = client.getQueryData<YardState>(STATE);
    beatsAhead = state && beat.seq !== state.seq ? beatsAhead + 1 : 0;
    if (beatsAhead >= 2) {
      beatsAhead = 0;
      refetch();
    }
  });
  return () => void socket.close();
}
