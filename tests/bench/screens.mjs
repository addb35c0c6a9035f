// How fast the screens are in Chromium, slowed down four times as a stand-in for a phone of the middle range. Needs Chromium (CHROMIUM names it).
/* global PerformanceObserver, MutationObserver, document, navigator, performance, requestAnimationFrame, setInterval, clearInterval -- part of it runs in the page */
import { chmodSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { base, quantile, setUpYard, start, stop, wait } from './house.mjs';

const SLOWER = 4;
const PHONE = { width: 390, height: 844 };
const BOARD = { width: 1920, height: 1080 };
const UPDATES = Number(process.env.UPDATES ?? 10_000);
const IDLE_S = 20;
const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

const row = (what, value, unit, limit) => console.log(`${what.padEnd(64)} ${String(value).padStart(8)} ${unit.padEnd(8)} ${limit === undefined ? '' : `(limit ${limit})`}`);

/** Watches the page from its first moment: largest picture, shifts, how long each touch took to be drawn. */
function watchPage() {
  const seen = { lcpMs: 0, cls: 0, touches: [] };
  globalThis.__seen = seen;
  new PerformanceObserver((list) => list.getEntries().forEach((entry) => (seen.lcpMs = entry.startTime))).observe({ type: 'largest-contentful-paint', buffered: true });
  new PerformanceObserver((list) => list.getEntries().forEach((entry) => !entry.hadRecentInput && (seen.cls += entry.value))).observe({ type: 'layout-shift', buffered: true });
  new PerformanceObserver((list) => list.getEntries().forEach((entry) => entry.interactionId && seen.touches.push(entry.duration))).observe({ type: 'event', durationThreshold: 16, buffered: true });
}

async function slowed(page) {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  await session.send('Performance.enable');
  const metric = async (name) => (await session.send('Performance.getMetrics')).metrics.find((one) => one.name === name).value;
  const heapMiB = async () => {
    await session.send('HeapProfiler.collectGarbage');
    return (await metric('JSHeapUsedSize')) / 2 ** 20;
  };
  return { metric, heapMiB };
}

async function openContext(browser, jar, more) {
  const context = await browser.newContext({ ...more });
  await context.addCookies(jar.map((pair) => ({ name: pair.split('=')[0], value: pair.slice(pair.indexOf('=') + 1), url: base })));
  await context.addInitScript(watchPage);
  return context;
}

/** Speaks to the board in place of the server, so that updates come when the bench wants them: the text frames of Engine.IO 4 and Socket.IO 5. */
async function feedByHand(page) {
  let send;
  await page.routeWebSocket(/\/live\//, (socket) => {
    send = (event, message) => socket.send(`42${JSON.stringify([event, message])}`);
    socket.send(`0${JSON.stringify({ sid: 'bench', upgrades: [], pingInterval: 600_000, pingTimeout: 600_000, maxPayload: 1_000_000 })}`);
    socket.onMessage((text) => text === '40' && socket.send('40{"sid":"bench"}'));
  });
  return (event, message) => send(event, message);
}

async function wall(browser, jar, ask) {
  const context = await openContext(browser, jar, { viewport: BOARD, serviceWorkers: 'block' });
  const page = await context.newPage();
  const { metric, heapMiB } = await slowed(page);
  const tell = await feedByHand(page);
  const state = await ask('GET', '/state');
  await page.route('**/api/state', (route) => route.fulfill({ json: state }));
  await page.goto(`${base}/wall`);
  await page.locator('[data-row]').first().waitFor();
  await wait(1500);
  row('wall: first whole picture (LCP), from the network', (await page.evaluate(() => globalThis.__seen.lcpMs)).toFixed(0), 'ms', 1000);
  row('wall: layout shift while it opens (CLS)', (await page.evaluate(() => globalThis.__seen.cls)).toFixed(3), '', 0.02);
  let seq = state.seq;
  const clockNow = () => ({ now: new Date().toISOString(), speed: 1 });
  const beat = () => tell('beat', { seq, clock: clockNow() });
  const update = () => {
    const pits = [state.pits[seq % state.pits.length]].map((view) => ({ ...view, due: view.due && { ...view.due, dueAt: new Date(Date.now() + (1 + (seq % 50)) * 60_000).toISOString() } }));
    tell('change', { seq: ++seq, clock: clockNow(), event: 'due-moved', changed: { pits } });
  };
  const beats = setInterval(beat, 1000);
  await page.evaluate(() => {
    globalThis.__drawn = [];
    globalThis.__await = () => {
      const began = performance.now();
      new MutationObserver((_, watcher) => {
        watcher.disconnect();
        requestAnimationFrame(() => setTimeout(() => globalThis.__drawn.push(performance.now() - began)));
      }).observe(document.querySelector('ol'), { subtree: true, childList: true, attributes: true, characterData: true });
    };
  });
  for (let i = 0; i < 30; i++) {
    await page.evaluate(() => globalThis.__await());
    update();
    await wait(150);
  }
  const drawn = await page.evaluate(() => globalThis.__drawn);
  row(`wall: an update from the wire to the screen, p95 of ${drawn.length}`, quantile(drawn, 0.95).toFixed(0), 'ms', 100);
  const before = await metric('TaskDuration');
  await wait(IDLE_S * 1000);
  row(`wall: CPU while nothing happens, over ${IDLE_S} s`, ((100 * ((await metric('TaskDuration')) - before)) / IDLE_S).toFixed(1), '%', 5);
  const settled = Math.floor(UPDATES / 10);
  for (let i = 0; i < settled; i++) {
    update();
    if (i % 20 === 19) await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => resolve())));
  }
  const early = await heapMiB();
  for (let i = settled; i < UPDATES; i++) {
    update();
    if (i % 20 === 19) await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => resolve())));
  }
  const late = await heapMiB();
  row(`wall: memory after ${settled} and after ${UPDATES} updates`, `${early.toFixed(1)} ${late.toFixed(1)}`, 'MiB', 'no growth');
  clearInterval(beats);
  await context.close();
}

async function round(browser, jar) {
  const context = await openContext(browser, jar, { viewport: PHONE, hasTouch: true });
  const page = await context.newPage();
  const scripts = new Map();
  page.on('response', async (answer) => {
    if (answer.url().endsWith('.js') && !answer.url().includes('service-worker')) scripts.set(answer.url(), await answer.body().catch(() => undefined));
  });
  await page.goto(`${base}/round`);
  await page.getByRole('radiogroup').first().waitFor();
  await wait(1000);
  const gzipped = (isCounted) => ([...scripts].reduce((sum, [url, body]) => sum + (body && isCounted(url) ? gzipSync(body, { level: 9 }).length : 0), 0) / 1000).toFixed(0);
  const isLater = (url) => /\/socket-/.test(url);
  row('round: JavaScript until a check can be recorded', gzipped((url) => !isLater(url)), 'kB gzip', 150);
  row('round: and the live push, fetched after the first picture', gzipped(isLater), 'kB gzip');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await wait(16_000); // what is known is kept each quarter of a minute
  await context.setOffline(true);
  await slowed(page);
  const began = performance.now();
  await page.reload({ waitUntil: 'commit' });
  await page.getByRole('radiogroup').first().waitFor();
  row('round: opens without signal, from the phone', (performance.now() - began).toFixed(0), 'ms', 1500);
  await wait(1000);
  await page.evaluate(() => (globalThis.__seen.touches.length = 0));
  for (const n of [0, 1, 2]) {
    await page.getByRole('radiogroup').nth(n).getByRole('radio').nth(1).tap();
    await wait(400);
  }
  await page.getByRole('button', { name: /^Done/ }).first().tap();
  await page.getByText('Recorded on this phone').waitFor();
  await wait(500);
  const touches = await page.evaluate(() => globalThis.__seen.touches);
  row(`round: touch to its echo on the screen, the slowest of ${touches.length} (INP)`, Math.max(...touches, 0).toFixed(0), 'ms', 100);
  row('round: layout shift (CLS)', (await page.evaluate(() => globalThis.__seen.cls)).toFixed(3), '', 0.02);
  await context.close();
}

async function desks(browser, jar) {
  for (const screen of ['night', 'loading', 'food', 'woodyard', 'service', 'setup', 'print']) {
    const context = await openContext(browser, jar, { viewport: BOARD, serviceWorkers: 'block' });
    const page = await context.newPage();
    await slowed(page);
    await page.goto(`${base}/${screen}`);
    await page.locator('h1').waitFor();
    await wait(2500);
    const { lcpMs, cls } = await page.evaluate(() => globalThis.__seen);
    row(`${screen}: first whole picture`, lcpMs.toFixed(0), 'ms');
    row(`${screen}: layout shift (CLS)`, cls.toFixed(3), '', 0.02);
    await context.close();
  }
}

export async function run() {
  const executablePath = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) => path && existsSync(path));
  if (!executablePath) return console.log('not measured: no Chromium was found. Install one, or set CHROMIUM to its path.');
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-bench-'));
  chmodSync(folder, 0o755);
  const { house, said } = await start(folder);
  const browser = await chromium.launch({ executablePath, args: ARGS });
  try {
    const { jar, ask, command, pits, at } = await setUpYard(said);
    for (const { id } of pits) await command('/checks', { pitId: id, seenAt: at(0), bed: 'fair', left: 'some', raked: false, splits: 1 });
    await wait(3000);
    console.log(`Chromium, CPU slowed down ${SLOWER} times`);
    await wall(browser, jar, ask);
    await round(browser, jar);
    await desks(browser, jar);
  } finally {
    await browser.close();
    await stop(house);
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run();
