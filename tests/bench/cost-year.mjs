// A year of nights in PostgreSQL: 365 services, 400 checks each night, eight cooks, six pits, eight lots; what the report of all of them takes.
// On DATABASE_URL where it is set, else on an embedded server of its own.
import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { DataSource } from 'typeorm';
import { AppModule } from '../../apps/api/dist/app.module.js';
import { EmbeddedDatabase } from '../../apps/api/dist/platform/database/index.js';
import { Services } from '../../apps/api/dist/services/index.js';

const NIGHTS = 365;
const CHECKS = 400;

async function fill(database, yardId) {
  const ask = (sql, given = []) => database.query(sql, given);
  await ask(`insert into yard values ($1, 'Saltmarsh Yard', 'America/Chicago', 'us', 'en', 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, now())`, [yardId]);
  await ask(`insert into crew_member select gen_random_uuid(), $1, 'Person ' || n, 'crew', 'en', 2000 + n * 37, null, false from generate_series(1, 4) n`, [yardId]);
  await ask(`insert into pit select gen_random_uuid(), $1, 'Pit ' || n, n, 4, 'left', 90, 2.28, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false from generate_series(1, 6) n`, [yardId]);
  await ask(`insert into lot (id, yard_id, name, species, length_m, thickness_m, moisture_frac, bought_at, bought_pieces, price_cents)
             select gen_random_uuid(), $1, 'Lot ' || n, 'white-oak', 0.36, 0.09, 0.14, now() - interval '2 years', 25000, 2500000 + n * 997 from generate_series(1, 8) n`, [yardId]);
  const night = `now() - (n || ' days')::interval`;
  await ask(`insert into service select gen_random_uuid(), $1, 'Service ' || n, ${night}, 200 from generate_series(1, ${NIGHTS}) n`, [yardId]);
  await ask(`insert into shift select gen_random_uuid(), $1, ${night} - interval '14 hours', ${night} from generate_series(1, ${NIGHTS}) n`, [yardId]);
  await ask(`insert into shift_person select shift.id, crew_member.id, shift.starts_at, shift.ends_at, 'here', null, null from shift, crew_member where shift.yard_id = $1`, [yardId]);
  await ask(`insert into cook (id, yard_id, service_id, cut, shape, pieces, weight_kg, on_at, off_at, yield_kg)
             select gen_random_uuid(), $1, service.id, 'Cut ' || c, 'slab', 4, 12 + c * 3.7, ready_by - interval '13 hours', ready_by - interval '1 hour', 8 + c from service, generate_series(1, 8) c where service.yard_id = $1`, [yardId]);
  await ask(`insert into placement (id, cook_id, pit_id, zone_nth, pieces, from_at, until_at)
             select gen_random_uuid(), id, (select id from pit where yard_id = $1 order by md5(cook.id::text || pit.id::text) limit 1), 0, 4, on_at, off_at from cook where yard_id = $1`, [yardId]);
  // A cart holds two lots a night: that of the pit and the next.
  await ask(`insert into wood_move (id, yard_id, lot_id, pit_id, kind, stack_pieces, cart_pieces, moved_at)
             select gen_random_uuid(), $1, lots.ids[1 + (k * 5 + n * 3) % 6 + (k / 200)], pits.ids[1 + (k * 5 + n * 3) % 6], 'burned', 0, -1, ${night} - (k * 2 || ' minutes')::interval
             from generate_series(1, ${NIGHTS}) n, generate_series(1, ${CHECKS}) k, (select array_agg(id order by name) ids from lot where yard_id = $1) lots, (select array_agg(id order by name) ids from pit where yard_id = $1) pits`, [yardId]);
  await ask(`insert into lot_burned select lot_id, (moved_at at time zone 'UTC')::date, count(*) from wood_move where yard_id = $1 group by 1, 2`, [yardId]);
  await ask('analyze');
}

/** Prints how long the report of a year takes, from the database to the sums. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-year-'));
  chmodSync(folder, 0o755);
  const own = process.env.DATABASE_URL ? undefined : await EmbeddedDatabase.open({ folder: join(folder, 'server'), settings: { fsync: 'off' } });
  const app = await NestFactory.createApplicationContext(AppModule.on({ databaseUrl: own?.url ?? process.env.DATABASE_URL, workers: 0, connections: 4, dataFolder: folder }), { logger: ['error'] });
  try {
    const yardId = randomUUID();
    await fill(app.get(DataSource), yardId);
    const since = Math.floor(Date.now() / 1000) - 366 * 86_400;
    const runs = [];
    let costs = [];
    for (let i = 0; i < 5; i++) {
      const [from, cpu] = [performance.now(), process.cpuUsage()];
      costs = await app.get(Services).costs({ yardId }, since);
      const { user, system } = process.cpuUsage(cpu);
      runs.push({ ms: Math.round(performance.now() - from), cpuMs: Math.round((user + system) / 1000) });
    }
    const [first, ...then] = runs;
    const median = then.sort((a, b) => a.ms - b.ms)[2];
    console.log(`a year of ${costs.length} services, ${CHECKS} checks a night: first ${first.ms} ms (${first.cpuMs} ms of this process), then ${median.ms} ms (${median.cpuMs}), median of 4; in all $${(costs.reduce((sum, { totalCents }) => sum + totalCents, 0) / 100).toFixed(2)}`);
  } finally {
    await app.close();
    await own?.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
