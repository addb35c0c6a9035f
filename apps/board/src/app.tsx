import { lazy, Suspense, useState, type ComponentType } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { Looking } from './looking.js';
import { Opening } from './parts/opening.js';

/** The code of each screen, by the first word of its address. */
const CODE = {
  wall: () => import('./screens/wall/index.js').then((m) => m.WallScreen),
  round: () => import('./screens/round/index.js').then((m) => m.RoundScreen),
  night: () => import('./screens/night/index.js').then((m) => m.NightScreen),
  pit: () => import('./screens/pit/index.js').then((m) => m.PitScreen),
  loading: () => import('./screens/loading/index.js').then((m) => m.LoadingScreen),
  food: () => import('./screens/food/index.js').then((m) => m.FoodScreen),
  woodyard: () => import('./screens/woodyard/index.js').then((m) => m.WoodyardScreen),
  service: () => import('./screens/service/index.js').then((m) => m.ServiceScreen),
  records: () => import('./screens/records/index.js').then((m) => m.RecordsScreen),
  print: () => import('./screens/print/index.js').then((m) => m.PrintScreen),
  setup: () => import('./screens/setup/index.js').then((m) => m.SetupScreen),
  status: () => import('./screens/status/index.js').then((m) => m.StatusScreen),
  'first-run': () => import('./screens/entry/first-run.js').then((m) => m.FirstRunScreen),
  enrol: () => import('./screens/entry/enrol.js').then((m) => m.EnrolScreen),
  'sign-in': () => import('./screens/entry/sign-in.js').then((m) => m.SignInScreen),
} as const satisfies Record<string, () => Promise<ComponentType>>;
type Word = keyof typeof CODE;

/** Screens whose code is there already. */
const there = new Map<string, ComponentType>();
const fetched = async (word: Word): Promise<ComponentType> => {
  const screen = await CODE[word]();
  there.set(word, screen);
  return screen;
};

/** A screen, drawn at once where its code is there; React holds back for a moment what it had to wait for. */
function screenAt(word: Word): ComponentType {
  const Later = lazy(async () => ({ default: await fetched(word) }));
  return function Screen() {
    const [Shown] = useState(() => there.get(word) ?? Later);
    return <Shown />;
  };
}
const WallScreen = screenAt('wall');
const RoundScreen = screenAt('round');
const NightScreen = screenAt('night');
const PitScreen = screenAt('pit');
const LoadingScreen = screenAt('loading');
const FoodScreen = screenAt('food');
const WoodyardScreen = screenAt('woodyard');
const ServiceScreen = screenAt('service');
const RecordsScreen = screenAt('records');
const PrintScreen = screenAt('print');
const SetupScreen = screenAt('setup');
const StatusScreen = screenAt('status');
const FirstRunScreen = screenAt('first-run');
const EnrolScreen = screenAt('enrol');
const SignInScreen = screenAt('sign-in');

/** Addresses at which nobody may look at a yard yet. */
export const ENTRIES: readonly string[] = ['/first-run', '/enrol', '/sign-in'];

/** Fetches the code of the screen at an address before it is drawn. What fails here is asked for again when it is. */
export async function fetchScreen(pathname: string): Promise<void> {
  const [, word = ''] = pathname.split('/');
  if (Object.hasOwn(CODE, word)) await fetched(word as Word).catch(() => undefined);
}

/** Every address of the board. Each screen is its own chunk. */
export function App() {
  return (
    <Suspense fallback={<Opening />}>
      <Switch>
        <Route path="/first-run" component={FirstRunScreen} />
        <Route path="/enrol" component={EnrolScreen} />
        <Route path="/sign-in" component={SignInScreen} />
        <Route>
          <Looking>
            {(home) => (
              <Suspense fallback={<Opening />}>
                <Switch>
                  <Route path="/wall" component={WallScreen} />
                  <Route path="/round" component={RoundScreen} />
                  <Route path="/night" component={NightScreen} />
                  <Route path="/pit/:pitId" component={PitScreen} />
                  <Route path="/loading" component={LoadingScreen} />
                  <Route path="/food/:cookId?" component={FoodScreen} />
                  <Route path="/woodyard" component={WoodyardScreen} />
                  <Route path="/service/:serviceId?" component={ServiceScreen} />
                  <Route path="/records" component={RecordsScreen} />
                  <Route path="/print" component={PrintScreen} />
                  <Route path="/setup" component={SetupScreen} />
                  <Route path="/status" component={StatusScreen} />
                  <Route>
                    <Redirect to={home} replace />
                  </Route>
                </Switch>
              </Suspense>
            )}
          </Looking>
        </Route>
      </Switch>
    </Suspense>
  );
}
