import '@fontsource/barlow-semi-condensed/latin-500.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './parts/tokens.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';
import { keptTheme } from './parts/theme.js';

document.documentElement.dataset['theme'] = keptTheme();
// The board is asked to show what it has, however long the network is away: queries are never held back as 'offline'.
const client = new QueryClient({ defaultOptions: { queries: { networkMode: 'always', retry: false, refetchOnWindowFocus: false } } });

createRoot(document.getElementById('board')!).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
