import { useSearchParams } from 'wouter';
import { useMay, useSetup } from '../../live/use-setup.js';
import { Opening } from '../../parts/opening.js';
import { PanelLinks } from '../../parts/panel-links.js';
import { Sheet } from '../../parts/sheet.js';
import { useDeskWords } from '../../words/desk.js';
import { useSetupWords } from '../../words/setup.js';
import { CrewPanel } from './crew-panel.js';
import { DevicesPanel } from './devices-panel.js';
import { GuidePanel } from './guide-panel.js';
import { PayPanel } from './pay-panel.js';
import { PitsPanel } from './pits-panel.js';
import { PlaceForm } from './place-form.js';
import { ProbesPanel } from './probes-panel.js';
import { YardForm } from './yard-form.js';
import { YardPlan } from './yard-plan.js';

const SHOWS = ['guide', 'plan', 'yard', 'pits', 'probes', 'crew', 'pay', 'devices'] as const;

/** How the yard is set up: its plan, its pits, its people, its devices. */
export function SetupScreen() {
  const say = useSetupWords();
  const desk = useDeskWords();
  const setup = useSetup();
  const mayPlan = useMay('plan');
  const mayManage = useMay('manage');
  const [search] = useSearchParams();
  if (!mayPlan) return <Sheet title={say('title')}>{desk('onlyLead')}</Sheet>;
  if (!setup) return <Opening />;
  const shows = mayManage ? SHOWS : (['plan', 'probes', 'pay'] as const);
  const show = shows.find((one) => one === search.get('show')) ?? (mayManage && setup.pits.length === 0 ? 'guide' : 'plan');
  return (
    <Sheet title={say('title')}>
      <PanelLinks label={say('shows')} panels={shows.map((one) => ({ show: one, label: say(`show.${one}`), href: `/setup?show=${one}` }))} shown={show} />
      {!mayManage && show !== 'probes' && <p>{desk('onlyManager')}</p>}
      {show === 'guide' && <GuidePanel setup={setup} />}
      {show === 'plan' && <YardPlan setup={setup} mayMove={mayManage} />}
      {show === 'yard' && <YardForm setup={setup} />}
      {show === 'yard' && <PlaceForm setup={setup} />}
      {show === 'pits' && <PitsPanel setup={setup} />}
      {show === 'probes' && <ProbesPanel setup={setup} />}
      {show === 'crew' && <CrewPanel setup={setup} />}
      {show === 'pay' && <PayPanel zone={setup.yard.timeZone} />}
      {show === 'devices' && <DevicesPanel />}
    </Sheet>
  );
}
