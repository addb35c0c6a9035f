import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

/** Every file of the board with what tells its versions apart; put in by the build. */
declare const OFFLINE_FILES: { readonly url: string; readonly revision: string | null }[];
const worker = self as unknown as { skipWaiting(): Promise<void> } & EventTarget;

// All screens open without signal, at whatever address. What the server knows is never answered from here.
cleanupOutdatedCaches();
precacheAndRoute(OFFLINE_FILES);
registerRoute(new NavigationRoute(createHandlerBoundToURL('/index.html'), { denylist: [/^\/(api|live)(\/|$)/] }));

// A new version waits until the page says that nobody is in the middle of something.
worker.addEventListener('message', (event) => {
  if ((event as MessageEvent).data === 'take-over') void worker.skipWaiting();
});
