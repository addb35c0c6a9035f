import '@fontsource/barlow-semi-condensed/latin-500.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './parts/tokens.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App, ENTRIES, fetchScreen } from './app.js';
import { recallLastKnown } from './live/last-known.js';
import { askAhead } from './live/use-yard.js';
import { keepOffline } from './offline/register.js';
import { fetchRefusals } from './parts/refusal.js';
import { keptByHand, shine, themeAt } from './parts/theme.js';
import { figuresOf } from './units/figures.js';
import { languageNow } from './words/words.js';

/** So long a page stays empty at most before it says that it is opening. */
const PATIENCE_MS = 800;
/** Well after the first picture, long before anything was sent that could be refused. */
const REFUSALS_AFTER_MS = 4000;

// Until the yard is known: as chosen by hand, else night.
shine(themeAt(Date.now(), undefined, keptByHand()));
// The board is asked to show what it has, however long the network is away: queries are never held back as 'offline'.
const client = new QueryClient({ defaultOptions: { queries: { networkMode: 'always', retry: false, refetchOnWindowFocus: false } } });

// All that the first picture needs is on its way at once: the answers, the screen's code, what the device remembers.
const code = fetchScreen(location.pathname);
const answers = ENTRIES.includes(location.pathname) ? Promise.resolve() : askAhead(client);
// Without signal a device opens on what it last knew; with it, on the same for the moment until the server has answered.
const something = Promise.race([answers, recallLastKnown(client).then((known) => (known ? undefined : answers))]);
// While they are on their way a browser learns to write times, over which the first one takes it long.
figuresOf({ units: 'us', timeZone: 'UTC', language: languageNow() }).time(0);
// Drawn once, when there is something to draw; a slow network, or a store that another tab still holds, is not waited for.
await Promise.race([Promise.all([code, something]), new Promise((resolve) => setTimeout(resolve, PATIENCE_MS))]);
createRoot(document.getElementById('board')!).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
if (import.meta.env.PROD) void keepOffline();
setTimeout(fetchRefusals, REFUSALS_AFTER_MS);
