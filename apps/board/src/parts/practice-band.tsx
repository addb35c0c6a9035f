import { useYard } from '../live/use-yard.js';
import { useSharedWords } from '../words/shared.js';
import css from './practice-band.module.css';

/** On every screen of a practice night, so that nobody takes it for a real one. */
export function PracticeBand({ className }: { readonly className?: string | undefined }) {
  const say = useSharedWords();
  const yard = useYard();
  if (!yard?.yard.practice) return null;
  const { speed } = yard.clock;
  return (
    <div className={className ?? css['band']} role="status">
      {speed === 1 ? say('practiceBand') : say('practiceAtSpeed', { speed })}
    </div>
  );
}
