import type { ForecastView } from '@stokehold/domain/contract';
import { useFigures } from '../units/use-figures.js';
import { useSharedWords } from '../words/shared.js';

/** How the forecast stands: when it came, or since when and why none comes. */
export function ForecastSaid({ forecast }: { readonly forecast: ForecastView }) {
  const say = useSharedWords();
  const figures = useFigures();
  const { fetchedAt, trouble } = forecast;
  const came = fetchedAt && say('forecast.came', { time: figures.time(fetchedAt) });
  if (!trouble) return <p>{came ?? say('forecast.soon')}</p>;
  return (
    <p>
      {say('forecast.failing', { time: figures.time(trouble.since), why: say(`forecast.${trouble.why}`) })} {came}
    </p>
  );
}
