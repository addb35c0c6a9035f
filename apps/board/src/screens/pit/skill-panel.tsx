import type { FirePage } from '@stokehold/domain/contract';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { usePitWords } from '../../words/pit.js';
import css from './pit.module.css';

/** How good the forecasts of this night were, beside two that know nothing of fire, and whether the fan kept its promise. */
export function SkillPanel({ page }: { readonly page: FirePage }) {
  const say = usePitWords();
  const figures = useFigures();
  const { skill, inside } = page;
  return (
    <Panel title={say('skill')}>
      {inside && (
        <p className={css['large']}>
          {say('skill.words', { inside: figures.percent(inside.insideFrac), count: inside.count })} <span className={css['quiet']}>{say('skill.claim')}</span>
        </p>
      )}
      {skill.length === 0 ? (
        <p>{say('skill.none')}</p>
      ) : (
        <div className={css['scrolls']} tabIndex={0} role="group" aria-label={say('skill')}>
          <table className={`${css['table']} figure`}>
            <thead>
              <tr>
                <th scope="col">{say('skill.ahead')}</th>
                <th scope="col">{say('skill.error')}</th>
                <th scope="col">{say('skill.persistence')}</th>
                <th scope="col">{say('skill.trend')}</th>
                <th scope="col">{say('skill.inside')}</th>
                <th scope="col">{say('skill.compared')}</th>
              </tr>
            </thead>
            <tbody>
              {skill.map(({ aheadS, count, errorK, persistenceErrorK, trendErrorK, insideFrac }) => (
                <tr key={aheadS}>
                  <th scope="row">{figures.span(aheadS)}</th>
                  <td className={css['strong']}>{figures.of('rise', errorK)}</td>
                  <td>{figures.of('rise', persistenceErrorK)}</td>
                  <td>{trendErrorK === null ? '–' : figures.of('rise', trendErrorK)}</td>
                  <td>{figures.percent(insideFrac)}</td>
                  <td>{figures.count(count)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className={css['quiet']}>{say('skill.why')}</p>
    </Panel>
  );
}
