import { useQuery } from '@tanstack/react-query';
import { fromIso, later, toIso } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { ask } from '../../live/ask.js';
import { yardNowMs } from '../../live/heard.js';
import { passes, Refused } from '../../live/refused.js';
import { useMay } from '../../live/use-setup.js';
import { useYard } from '../../live/use-yard.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Opening } from '../../parts/opening.js';
import { Sheet } from '../../parts/sheet.js';
import { useDeskWords } from '../../words/desk.js';
import { useRecordsWords } from '../../words/records.js';
import { ChooseStretch, type Stretch } from './choose-stretch.js';
import { NightRecords } from './night-records.js';

/** What was kept of a night or of any stretch of days, for an inspector to read, to print and to take away. */
export function RecordsScreen() {
  const say = useRecordsWords();
  const desk = useDeskWords();
  const state = useYard();
  const mayPlan = useMay('plan');
  const nights = useQuery({ queryKey: ['record-nights'], queryFn: () => ask('recordNights', {}), enabled: mayPlan, retry: (_count, error) => passes(error), retryDelay: 2000 });
  const [chosen, setChosen] = useState<Stretch>();
  if (!state) return <Opening />;
  if (!mayPlan) return <Sheet title={say('title')}><p>{desk('onlyLead')}</p></Sheet>;
  const last = nights.data?.find(({ startsAt }) => fromIso(startsAt) <= yardNowMs() / 1000) ?? nights.data?.[0];
  const stretch = chosen ?? (last && stretchOf(last));
  return (
    <Sheet wide title={say('title')} beside={<Button onClick={() => print()}>{say('print')}</Button>}>
      {nights.data && <ChooseStretch zone={state.yard.timeZone} nights={nights.data.map(stretchOf)} stretch={stretch} onChange={setChosen} />}
      {nights.data && !stretch && <p>{say('noNights')}</p>}
      {stretch && <Kept stretch={stretch} />}
    </Sheet>
  );
}

/** A night with the fires lit before it and the food after it. */
const AROUND_S = 3 * 3600;
const stretchOf = ({ startsAt, endsAt }: { readonly startsAt: string; readonly endsAt: string }): Stretch => ({
  from: toIso(later(fromIso(startsAt), -AROUND_S)), until: toIso(later(fromIso(endsAt), AROUND_S)),
});

function Kept({ stretch }: { readonly stretch: Stretch }) {
  const say = useRecordsWords();
  const query = useQuery({ queryKey: ['records', stretch], queryFn: () => ask('records', stretch), retry: (_count, error) => passes(error), retryDelay: 2000 });
  if (query.error instanceof Refused) return <Failure of={query.error} />;
  return query.data ? <NightRecords view={query.data} /> : <p>{say('gathering')}</p>;
}
