import type { YardState } from '@stokehold/domain/contract';
import { useWoodyard } from '../../live/use-woodyard.js';
import { Caution } from '../../parts/caution.js';
import { useFigures } from '../../units/use-figures.js';
import { usePrintWords } from '../../words/print.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { PrintPage } from './page.js';
import css from './print.module.css';

/** What to cut to which length for which pit, to be ticked off at the saw. */
export function TrimPage({ state, nowMs }: { readonly state: YardState; readonly nowMs: number }) {
  const say = usePrintWords();
  const wood = useWoodyardWords();
  const figures = useFigures();
  const { view } = useWoodyard(state);
  const lotName = (id: string) => state.wood.lots.find((lot) => lot.id === id)?.name ?? '';
  const pitName = (id: string) => state.pits.find(({ pit }) => pit.id === id)?.pit.name ?? '';
  return (
    <PrintPage title={say('sheet.trim')} nowMs={nowMs}>
      {!view && <p>{say('making')}</p>}
      {view?.trim.length === 0 && <p>{say('noTrim')}</p>}
      <ul className={css['trims']}>
        {view?.trim.map((line) => (
          <li key={`${line.pitId} ${line.lotId}`} className={`figure ${css['tick']}`}>
            <strong>{wood('trim.line', { count: line.splits, lot: lotName(line.lotId), pit: pitName(line.pitId) })}</strong>{' '}
            {wood('trim.to', { length: figures.of('length', line.pieceLengthM), cuts: line.cuts, pieces: line.pieces })}
            {line.offcuts > 0 && ` ${wood('trim.offcuts', { count: line.offcuts, length: figures.of('length', line.offcutM) })}`}
            {line.short && <strong> ▲ {wood('trim.short')}</strong>}
          </li>
        ))}
      </ul>
      <Caution about="saw" />
    </PrintPage>
  );
}
