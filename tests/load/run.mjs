// What one and two processes of the house carry: 300 pits, 200 boards, 50 commands a second, each tenth a fire check and the others readings; how
// many more; and a kill of the one that leads. 300 pits ask for a check every nine seconds: five a second are 45 times as many.
// Needs a PostgreSQL server (LOAD_SERVER, or 127.0.0.1:5432), Redis (REDIS_URL, or 127.0.0.1:6379) and nginx. Speaks to this machine alone and stops by itself.
// `npm run load -- steady most killed` runs some of it.
import { cpus, loadavg } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { Commands } from './commands.mjs';
import { openBoards } from './boards.mjs';
import { holdEach } from './hold.mjs';
import { openHouses } from './houses.mjs';
import { openTown } from './town.mjs';

const TOWN = { yards: 30, pits: Number(process.env.LOAD_PITS ?? 300), boards: Number(process.env.LOAD_BOARDS ?? 200) };
const RATE = Number(process.env.LOAD_RATE ?? 50);
const SECONDS = Number(process.env.LOAD_SECONDS ?? 60);
const CHECK_EVERY = Number(process.env.LOAD_CHECK_EVERY ?? 10);
/** While it is asked how much they carry: how much of a core each process may take, for two cores hold the database, nginx, the boards and the phones too. */
const CORES = Number(process.env.LOAD_CORES ?? 0.4);
const UNDER_WAY = 48;
const POUR_S = 45;
/** Asked of an answer, ms (board-and-reliability of the project: p95, p99) and of a board. */
const ASKED = { answerP95: 150, answerP99: 400, wallP95: 1000, wallP99: 2000 };
const parts = process.argv.slice(2);
const wanted = (part) => parts.length === 0 || parts.includes(part);

const at = (values, q) => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * q))] ?? NaN;
const ms = (values) => [0.5, 0.95, 0.99].map((q) => at(values, q).toFixed(0)).join(' / ');

/** A town that burns, its boards and its phones, on so many processes. */
async function open(processes, boards = TOWN.boards) {
  const ground = await openHouses(processes);
  try {
    const town = await openTown(ground.database, ground.at, { ...TOWN, boards });
    const commands = new Commands(ground.at, town, CHECK_EVERY);
    const walls = openBoards(ground.at, town, (pitId) => commands.seen(pitId));
    for (let tries = 0; walls.open() < boards && tries < 300; tries++) await pause(100);
    if (walls.open() < boards) throw new Error(`only ${walls.open()} of ${boards} boards are open`);
    await carried(ground.database);
    return { ...ground, town, commands, walls, close: async () => (walls.close(), commands.close(), await ground.close()) };
  } catch (error) {
    await ground.close();
    throw error;
  }
}

/** Until all that was told is carried; gives how long that took, s. */
async function carried(database) {
  const began = Date.now();
  for (; Date.now() - began < 120_000; await pause(200)) {
    const { rows: [{ n }] } = await database.query('select count(*)::int as n from outbox where done_at is null');
    if (n === 0) break;
  }
  return (Date.now() - began) / 1000;
}

/** Event loop's delay of a process since it was asked last, p99 in ms. */
async function loopMs({ at: address }, who) {
  const text = await (await fetch(`${address}/api/metrics`, { headers: who })).text();
  return Number(/^nodejs_eventloop_lag_p99_seconds (\S+)/m.exec(text)?.[1]) * 1000;
}

async function expectKept({ commands, database, walls, town }) {
  const after = await carried(database);
  const kept = await commands.compare(database);
  const { rows } = await database.query('select id, seq::int as seq from yard');
  const seqs = new Map(rows.map(({ id, seq }) => [id, seq]));
  const behind = () => town.flatMap(({ yardId, boards }) => boards.map(() => seqs.get(yardId))).filter((seq, nth) => seq > walls.all[nth].heard.seq).length;
  const began = Date.now();
  while (behind() > 0 && Date.now() - began < 30_000) await pause(100);
  const gaps = walls.all.reduce((sum, { heard }) => sum + heard.gaps, 0);
  console.log(`  acknowledged ${kept.acknowledged}, lost ${kept.lost}, twice ${kept.twice}, unknown ${kept.unknown}, refused ${commands.refused.length}${commands.refused[0] ? ` (${commands.refused[0].slice(0, 120)})` : ''}; all carried ${after.toFixed(1)} s after the last; boards that never heard the last ${behind()} of ${walls.all.length}, numbers missing ${gaps}`);
}

async function steady(processes) {
  const load = await open(processes);
  try {
    const [who] = load.town[0].phones;
    for (const house of load.houses) await loopMs(house, who);
    const before = load.houses.map(({ weight }) => weight());
    const tookS = await load.commands.run(RATE, SECONDS);
    const weights = load.houses.map(({ weight }, nth) => ({ mib: weight().mib, cpu: (weight().cpuS - before[nth].cpuS) / tookS }));
    const loops = await Promise.all(load.houses.map((house) => loopMs(house, who)));
    console.log(`${processes} process${processes > 1 ? 'es' : ''}: ${TOWN.pits} pits, ${TOWN.boards} boards, ${RATE} commands a second for ${SECONDS} s`);
    console.log(`  acknowledged, p50 / p95 / p99: ${ms(load.commands.answerMs)} ms   (asked: p95 ${ASKED.answerP95}, p99 ${ASKED.answerP99})`);
    console.log(`  a check on the board, p50 / p95 / p99: ${ms(load.commands.wallMs)} ms of ${load.commands.wallMs.length}   (asked: p95 ${ASKED.wallP95}, p99 ${ASKED.wallP99})`);
    console.log(`  event loop's delay p99 ${loops.map((one) => one.toFixed(0)).join(', ')} ms   (asked: 50); processor ${weights.map(({ cpu }) => cpu.toFixed(2)).join(', ')} cores; memory ${weights.map(({ mib }) => mib.toFixed(0)).join(', ')} MiB`);
    await expectKept(load);
  } finally {
    await load.close();
  }
}

/** How many commands a second are answered and carried to the end when as many are sent as are answered. */
async function most(processes) {
  const load = await open(processes);
  let letGo;
  try {
    letGo = holdEach(load.houses.map(({ pid }) => pid), CORES);
    await load.commands.pour(UNDER_WAY, 10);
    await carried(load.database);
    const began = Date.now();
    const many = await load.commands.pour(UNDER_WAY, POUR_S);
    await carried(load.database);
    const rate = (1000 * many) / (Date.now() - began);
    console.log(`${processes} process${processes > 1 ? 'es' : ''}, ${letGo ? `each held to ${CORES} of a core` : 'not held to a part of a core, which only root may do'}: ${rate.toFixed(1)} commands a second, answered and carried to the end, over ${((Date.now() - began) / 1000).toFixed(0)} s`);
    await expectKept(load);
    return rate;
  } finally {
    await load.close();
    letGo?.();
  }
}

/** Which process holds the lock of the lead. */
async function leader({ database, houses }) {
  const { rows } = await database.query(`select application_name as name from pg_locks join pg_stat_activity using (pid) where locktype = 'advisory' and granted and datname = current_database() and application_name like 'stokehold lead %'`);
  return houses.find(({ pid }) => rows[0]?.name === `stokehold lead ${pid}`);
}

async function killed() {
  const load = await open(2);
  try {
    const first = await leader(load);
    const running = load.commands.run(RATE, 40);
    await pause(15_000);
    await first.end('SIGKILL');
    const killedAt = Date.now();
    let other;
    while (!(other = await leader(load)) || other === first) await pause(50);
    const ledAfter = (Date.now() - killedAt) / 1000;
    await running;
    console.log(`the process that leads is killed under ${RATE} commands a second: another leads ${ledAfter.toFixed(1)} s later   (asked: 10); asked again ${load.commands.again} times; acknowledged ${ms(load.commands.answerMs)} ms, slowest ${Math.max(...load.commands.answerMs).toFixed(0)} ms`);
    await expectKept(load);
  } finally {
    await load.close();
  }
}

console.log(`${cpus().length} cores of ${cpus()[0].model.trim()}, on which nginx, PostgreSQL, Redis, the boards and the phones run too; load before ${loadavg()[0].toFixed(1)}\n`);
if (wanted('steady')) for (const processes of [1, 2]) await steady(processes);
if (wanted('most')) {
  const [one, two] = [await most(1), await most(2)];
  console.log(`two processes carry ${(two / one).toFixed(2)} times as much as one   (asked: 1.6)`);
}
if (wanted('killed')) await killed();
