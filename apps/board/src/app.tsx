import { lazy, Suspense } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { Looking } from './looking.js';
import { Opening } from './parts/opening.js';

/** The code of each screen, by the first word of its address. */
const CODE = {
  wall: () => import('./screens/wall/index.js'),
  round: () => import('./screens/round/index.js'),
  night: () => import('./screens/night/index.js'),
  pit: () => import('./screens/pit/index.js'),
  loading: () => import('./screens/loading/index.js'),
  food: () => import('./screens/food/index.js'),
  woodyard: () => import('./screens/woodyard/index.js'),
  service: () => import('./screens/service/index.js'),
  records: () => import('./screens/records/index.js'),
  print: () => import('./screens/print/index.js'),
  setup: () => import('./screens/setup/index.js'),
  'first-run': () => import('./screens/entry/first-run.js'),
  enrol: () => import('./screens/entry/enrol.js'),
  'sign-in': () => import('./screens/entry/sign-in.js'),
};
const WallScreen = lazy(() => CODE.wall().then((m) => ({ default: m.WallScreen })));
const RoundScreen = lazy(() => CODE.round().then((m) => ({ default: m.RoundScreen })));
const NightScreen = lazy(() => CODE.night().then((m) => ({ default: m.NightScreen })));
const PitScreen = lazy(() => CODE.pit().then((m) => ({ default: m.PitScreen })));
const LoadingScreen = lazy(() => CODE.loading().then((m) => ({ default: m.LoadingScreen })));
const FoodScreen = lazy(() => CODE.food().then((m) => ({ default: m.FoodScreen })));
const WoodyardScreen = lazy(() => CODE.woodyard().then((m) => ({ default: m.WoodyardScreen })));
const ServiceScreen = lazy(() => CODE.service().then((m) => ({ default: m.ServiceScreen })));
const RecordsScreen = lazy(() => CODE.records().then((m) => ({ default: m.RecordsScreen })));
const PrintScreen = lazy(() => CODE.print().then((m) => ({ default: m.PrintScreen })));
const SetupScreen = lazy(() => CODE.setup().then((m) => ({ default: m.SetupScreen })));
const FirstRunScreen = lazy(() => CODE['first-run']().then((m) => ({ default: m.FirstRunScreen })));
const EnrolScreen = lazy(() => CODE.enrol().then((m) => ({ default: m.EnrolScreen })));
const SignInScreen = lazy(() => CODE['sign-in']().then((m) => ({ default: m.SignInScreen })));

/** Addresses at which nobody may look at a yard yet. */
export const ENTRIES: readonly string[] = ['/first-run', '/enrol', '/sign-in'];

/** Fetches the code of the screen at an address before it is drawn. What fails here is asked for again when it is. */
export function fetchScreen(pathname: string): void {
  const [, word = ''] = pathname.split('/');
  if (Object.hasOwn(CODE, word)) CODE[word as keyof typeof CODE]().catch(() => undefined);
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
