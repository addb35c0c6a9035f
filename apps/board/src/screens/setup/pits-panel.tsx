import type { PitId } from '@stokehold/domain/quantity';
import type { PitSettings, Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { freshPit } from './pit-draft.js';
import { PitForm } from './pit-form.js';
import css from './setup.module.css';

/** The pits as they stand; one at a time is opened and changed. */
export function PitsPanel({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [opened, setOpened] = useState<PitSettings>();
  const add = () => setOpened(freshPit(commandKey() as PitId, { xM: setup.yard.planWidthM / 2, yM: setup.yard.planHeightM / 2 }));
  return (
    <>
      <Panel title={say('pits.title')} beside={<Button onClick={add}>{say('pits.add')}</Button>}>
        {setup.pits.length === 0 && <p>{say('pits.none')}</p>}
        <ul className={css['pits']}>
          {setup.pits.map((pit) => (
            <li key={pit.id} className={pit.retired ? css['quiet'] : undefined}>
              <div className={css['pitDrawing']}>
                <PitDrawing pit={pit} lies={[]} bedFrac={null} lit={false} />
              </div>
              <span>
                <strong className={css['big']}>{pit.name}</strong>
                <br />
                <span className="figure">
                  {pit.retired ? say('pits.retired') : say('pits.facts', { length: figures.of('length', pit.chamberLengthM), diameter: figures.of('length', pit.chamberDiameterM), zones: pit.zones.length })}
                  <br />
                  {!pit.retired && say('pits.band', { low: figures.bare('temp', pit.band.lowC), high: figures.of('temp', pit.band.highC) })}
                </span>
              </span>
              <Button onClick={() => setOpened(pit)} aria-label={`${shared('do.change')} ${pit.name}`}>{shared('do.change')}</Button>
            </li>
          ))}
        </ul>
      </Panel>
      {opened && <PitForm key={opened.id} pit={opened} onDone={() => setOpened(undefined)} />}
    </>
  );
}
