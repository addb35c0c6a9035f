import type { Me } from '@stokehold/domain/contract';
import { useEffect, type ReactNode } from 'react';
import { Redirect, useLocation } from 'wouter';
import { homeOf, mayLook } from './home-of.js';
import { useFeed } from './live/use-yard.js';
import { useSending } from './live/use-kept.js';
import { useMe } from './live/use-me.js';
import { Opening } from './parts/opening.js';
import { speak } from './words/words.js';

function Fed({ me, children }: { readonly me: Me; readonly children: ReactNode }) {
  useFeed();
  useSending();
  const language = me.person?.language ?? me.yard.language;
  useEffect(() => speak(language), [language]);
  return children;
}

/** Lets in who may look, in their language, with the live push open; shows all others the way in. */
export function Looking({ children }: { readonly children: (home: string) => ReactNode }) {
  const { me, away } = useMe();
  const [place] = useLocation();
  if (me === undefined) return <Opening away={away} />;
  const home = homeOf(me);
  if (!mayLook(me)) return <Redirect to={home} replace />;
  if (me.device.kind === 'wall' && place !== '/wall') return <Redirect to="/wall" replace />;
  return <Fed me={me}>{children(home)}</Fed>;
}
