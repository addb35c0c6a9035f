import { lazy, Suspense } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { Looking } from './looking.js';
import { Opening } from './parts/opening.js';

const WallScreen = lazy(() => import('./screens/wall/index.js').then((m) => ({ default: m.WallScreen })));
const RoundScreen = lazy(() => import('./screens/round/index.js').then((m) => ({ default: m.RoundScreen })));
const NightScreen = lazy(() => import('./screens/night/index.js').then((m) => ({ default: m.NightScreen })));
const PitScreen = lazy(() => import('./screens/pit/index.js').then((m) => ({ default: m.PitScreen })));
const LoadingScreen = lazy(() => import('./screens/loading/index.js').then((m) => ({ default: m.LoadingScreen })));
const FoodScreen = lazy(() => import('./screens/food/index.js').then((m) => ({ default: m.FoodScreen })));
const WoodyardScreen = lazy(() => import('./screens/woodyard/index.js').then((m) => ({ default: m.WoodyardScreen })));
const ServiceScreen = lazy(() => import('./screens/service/index.js').then((m) => ({ default: m.ServiceScreen })));
const PrintScreen = lazy(() => import('./screens/print/index.js').then((m) => ({ default: m.PrintScreen })));
const SetupScreen = lazy(() => import('./screens/setup/index.js').then((m) => ({ default: m.SetupScreen })));
const FirstRunScreen = lazy(() => import('./screens/entry/first-run.js').then((m) => ({ default: m.FirstRunScreen })));
const EnrolScreen = lazy(() => import('./screens/entry/enrol.js').then((m) => ({ default: m.EnrolScreen })));
const SignInScreen = lazy(() => import('./screens/entry/sign-in.js').then((m) => ({ default: m.SignInScreen })));

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
