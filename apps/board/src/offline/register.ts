const LOOK_EVERY_MS = 60 * 60_000;
/** So long after its start a page has nothing in it yet that a reload would lose. */
const JUST_OPENED_MS = 3000;

/** A wall is never typed on: it may take a new version at any time. */
const mayReload = () => location.pathname === '/wall' || performance.now() < JUST_OPENED_MS;

function takeOver(waiting: ServiceWorker | null): void {
  if (waiting && mayReload()) waiting.postMessage('take-over');
}

/**
 * Keeps the board on the device, so that it opens without signal. A new version takes over when a page is opened, on a
 * wall at once: never under somebody's hands. Over plain HTTP browsers have no service worker, and nothing is kept.
 */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const hadWorker = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => hadWorker && location.reload());
  const registration = await navigator.serviceWorker.register('/service-worker.js', { updateViaCache: 'none' });
  takeOver(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const found = registration.installing;
    found?.addEventListener('statechange', () => found.state === 'installed' && hadWorker && takeOver(found));
  });
  setInterval(() => void registration.update().catch(() => undefined), LOOK_EVERY_MS);
}
