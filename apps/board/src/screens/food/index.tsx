import type { CookView, FoodEntryView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Link, useParams } from 'wouter';
import { useClock } from '../../live/use-clock.js';
import { useMay } from '../../live/use-setup.js';
import { useYard } from '../../live/use-yard.js';
import { Failure } from '../../parts/failure.js';
import { Opening } from '../../parts/opening.js';
import { PanelLinks } from '../../parts/panel-links.js';
import { Sheet } from '../../parts/sheet.js';
import { useFoodWords } from '../../words/food.js';
import { AfterPanel } from './after-panel.js';
import { CookList } from './cook-list.js';
import { CutsPanel } from './cuts-panel.js';
import { DonePanel } from './done-panel.js';
import { FindingsPanel } from './findings-panel.js';
import css from './food.module.css';
import { cooksInOrder } from './food-said.js';
import { LogPanel } from './log-panel.js';
import { OwnLimitsPanel } from './own-limits-panel.js';
import { RecordForm } from './record-form.js';
import { useCourse, useCuts, useFoodLimits } from './use-course.js';
import { WhatIfPanel } from './what-if-panel.js';

const SETTINGS = 'settings';

/** The food of the night: when each cook is done, what was read of it, and each limit it is held against. */
export function FoodScreen() {
  const say = useFoodWords();
  const state = useYard();
  const { cookId } = useParams();
  if (!state) return <Opening />;
  const settings = cookId === SETTINGS;
  const shown = settings ? undefined : (state.cooks.find(({ id }) => id === cookId) ?? cooksInOrder(state.cooks)[0]);
  return (
    <Sheet wide title={say('title')}>
      <PanelLinks label={say('title')} shown={settings ? SETTINGS : 'cooks'} panels={[{ show: 'cooks', label: say('cooks'), href: '/food' }, { show: SETTINGS, label: say('settings'), href: `/food/${SETTINGS}` }]} />
      {settings ? <Settings /> : (
        <div className={css['page']}>
          <CookList cooks={state.cooks} shown={shown?.id} />
          {shown && <OneCook key={shown.id} cook={shown} state={state} />}
        </div>
      )}
      <p className={css['quiet']}>{say('estimate')}</p>
    </Sheet>
  );
}

function OneCook({ cook, state }: { readonly cook: CookView; readonly state: YardState }) {
  const say = useFoodWords();
  const nowMs = useClock();
  const mayRecord = useMay('record');
  const { course, refused, refresh } = useCourse(cook);
  const [correcting, setCorrecting] = useState<FoodEntryView>();
  const recorded = () => {
    setCorrecting(undefined);
    void refresh();
  };
  return (
    <div className={css['matter']}>
      <Failure of={refused} />
      {!course && !refused && <p>{say('opening')}</p>}
      {course && <DonePanel course={course} nowMs={nowMs} zone={state.yard.timeZone} />}
      {mayRecord && cook.onAt !== null && <RecordForm key={correcting?.id ?? 'new'} {...{ cook, state, correcting }} onDone={recorded} />}
      {course && <FindingsPanel findings={course.findings} />}
      {course && cook.offAt === null && course.core && <WhatIfPanel cook={cook} />}
      {course?.cut && cook.onAt !== null && <AfterPanel cook={cook} />}
      {course && <LogPanel log={course.log} people={state.people} mayRecord={mayRecord} onCorrect={setCorrecting} />}
      <p>
        <Link href="/night">{say('toNight')}</Link>
      </p>
    </div>
  );
}

function Settings() {
  const { cuts, refresh } = useCuts();
  const own = useFoodLimits();
  return (
    <>
      {own.limits && <OwnLimitsPanel key={JSON.stringify(own.limits)} limits={own.limits} onSaved={own.refresh} />}
      {cuts && <CutsPanel cuts={cuts} onSaved={refresh} />}
    </>
  );
}
