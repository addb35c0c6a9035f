import type { CutSettings } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { CutShape } from '../../parts/cut-shape.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import { sourceOf } from './cut-source.js';
import { CutForm } from './cut-form.js';
import css from './food.module.css';

/** The yard's cuts with where their values come from. */
export function CutsPanel({ cuts, onSaved }: { readonly cuts: readonly CutSettings[]; readonly onSaved: () => Promise<void> }) {
  const say = useFoodWords();
  const figures = useFigures();
  const mayPlan = useMay('plan');
  const [changing, setChanging] = useState<string>();
  const chosen = cuts.find(({ code }) => code === changing);
  const facts = (cut: CutSettings) => [
    cut.done.coreTempC === null ? say('cuts.doneTender') : say('cuts.done', { temp: figures.of('temp', cut.done.coreTempC) }),
    cut.wrap ? say('cuts.wrap', { in: say(`wrap.${cut.wrap.kind}`), temp: figures.of('temp', cut.wrap.atCoreC) }) : say('cuts.noWrap'),
    say('cuts.rest', { span: figures.span(cut.rest.leastS) }),
  ];
  return (
    <>
      <Panel title={say('cutsTitle')}>
        <p>{say('cuts.hint')}</p>
        <ul className={css['rows']}>
          {cuts.map((cut) => (
            <li key={cut.code}>
              <div className={css['line']}>
                <span className={css['row']}>
                  <svg width="44" height="30" aria-hidden="true">
                    <CutShape shape={cut.silhouette} x={2} y={2} width={40} height={26} />
                  </svg>
                  <span>
                    <strong>{cut.name}</strong> {facts(cut).join(' · ')}
                  </span>
                </span>
                {mayPlan && <Button onClick={() => setChanging(cut.code)}>{say('cuts.change')}</Button>}
              </div>
              <span className={css['quiet']}>{sourceOf(cut, say)}</span>
            </li>
          ))}
        </ul>
      </Panel>
      {chosen && <CutForm key={chosen.code} cut={chosen} onDone={() => setChanging(undefined)} onSaved={onSaved} />}
    </>
  );
}
