import { useQuery } from '@tanstack/react-query';
import type { Setup } from '@stokehold/domain/contract';
import { Link } from 'wouter';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';
import { useYard } from '../../live/use-yard.js';
import { Panel } from '../../parts/panel.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { PLACE_OF, STEPS, stepsDone } from './guide-steps.js';
import css from './setup.module.css';
import { useDevices } from './use-devices.js';

/** From an empty yard to a practice night, step by step; what is done is seen in the yard itself. */
export function GuidePanel({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const state = useYard();
  const devices = useDevices();
  const shifts = useQuery({ queryKey: ['coming-shifts'], queryFn: () => ask('comingShifts', {}), retry: (_count, error) => passes(error) });
  const done = stepsDone({ setup, devices: devices ?? [], lots: state?.wood.lots ?? [], hasShift: (shifts.data?.length ?? 0) > 0 });
  const next = STEPS.find((step) => !done.has(step));
  return (
    <Panel title={say('guide.title')}>
      <p>{say('guide.why')}</p>
      <ol className={css['guide']}>
        {STEPS.map((step) => (
          <li key={step} aria-current={step === next ? 'step' : undefined}>
            <span aria-hidden="true">{done.has(step) ? '✓' : step === next ? '▸' : '·'}</span>
            <span>
              <strong>{step === 'practice' ? say('guide.practice') : <Link href={PLACE_OF[step]}>{say(`guide.${step}`)}</Link>}</strong>{' '}
              {done.has(step) && <span className={css['quiet']}>{shared('do.done')}</span>}
              <br />
              {say(`guide.${step}.how`)}
            </span>
          </li>
        ))}
      </ol>
    </Panel>
  );
}
