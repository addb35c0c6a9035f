import type { DynamicModule, INestApplication, Type } from '@nestjs/common';
import { Test } from '@nestjs/testing';
import { type EpochS, epochS, fromIso, type YardId } from '@stokehold/domain/quantity';
import { randomBytes, randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import { DataSource } from 'typeorm';
import { inject } from 'vitest';
import type { Actor } from './actor.js';
import { Clock } from './clock.js';
import { Outbox } from './outbox.js';
import { PlatformModule } from './platform.module.js';
import { ProblemFilter } from './refusals.js';
import type { AskedRequest } from './routing.js';

/** A house for tests: real modules on a real database of its own, with a clock that the test turns by hand. */
export interface TestHouse {
  readonly app: INestApplication;
  readonly database: DataSource;
  readonly yardId: YardId;
  /** Who the next requests come from; a test may exchange it. */
  actor: Actor | undefined;
  now: EpochS;
  /** Carries everything that waits in the yard's outbox. */
  settle(): Promise<void>;
  close(): Promise<void>;
}

let given = 0;
/** Ids that are the same in every run of a test file: plans decide ties by them. */
export const sameIds = (n: number): string[] => Array.from({ length: n }, () => `00000000-0000-4000-8000-${String((given += 1)).padStart(12, '0')}`);

async function onServer(sql: string): Promise<void> {
  const client = new Client({ connectionString: inject('databaseServer') });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

/** A database of its own on the run's server. */
async function ownDatabase(): Promise<{ readonly url: string; drop(): Promise<void> }> {
  const name = `stokehold_test_${randomBytes(6).toString('hex')}`;
  await onServer(`create database ${name}`);
  const url = new URL(inject('databaseServer'));
  url.pathname = `/${name}`;
  return { url: url.href, drop: () => onServer(`drop database if exists ${name} with (force)`) };
}

export interface OpenedHouse {
  readonly app: INestApplication;
  readonly database: DataSource;
  close(): Promise<void>;
}

/** A house as it is, with all its modules, on a database and a data folder of its own. */
export async function openTestHouseOf(module: (databaseUrl: string, dataFolder: string) => DynamicModule): Promise<OpenedHouse> {
  const own = await ownDatabase();
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-test-data-'));
  const built = await Test.createTestingModule({ imports: [module(own.url, folder)] }).compile();
  const app = built.createNestApplication({ logger: ['error'] });
  app.setGlobalPrefix('api');
  app.useGlobalFilters(new ProblemFilter());
  await app.init();
  const close = async () => {
    await app.close();
    await own.drop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { app, database: app.get(DataSource), close };
}

/** A house of these modules with one empty yard, and a manager on a hand-held device as the one who asks. */
export async function openTestHouse(modules: readonly Type[], at = '2027-01-15T23:00:00Z'): Promise<TestHouse> {
  const own = await ownDatabase();
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-test-data-'));
  const built = await Test.createTestingModule({
    imports: [PlatformModule.on({ databaseUrl: own.url, workers: 0, connections: 4, dataFolder: folder }), ...modules],
  }).compile();
  const app = built.createNestApplication({ logger: ['error'] });
  app.setGlobalPrefix('api');
  app.useGlobalFilters(new ProblemFilter());
  const yardId = sameIds(1)[0] as YardId;
  const database = app.get(DataSource);
  const managerId = randomUUID();
  const deviceId = randomUUID();
  const house: TestHouse = {
    app,
    database,
    yardId,
    actor: {
      yardId,
      device: { id: deviceId as Actor['device']['id'], kind: 'hand', name: 'Tablet' },
      person: { id: managerId as NonNullable<Actor['person']>['id'], name: 'Renske', role: 'manager', language: 'en' },
    },
    now: fromIso(at),
    settle: () => app.get(Outbox).drain(yardId),
    close: async () => {
      await app.close();
      await own.drop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  app.get(Clock).giveOwnTime(yardId, { now: () => epochS(house.now), speed: 1 });
  app.use((request: AskedRequest, _: unknown, next: () => void) => {
    if (house.actor) request.actor = house.actor;
    next();
  });
  await database.query(
    `insert into yard values ($1, 'Saltmarsh Yard', 'America/Chicago', 'us', 'en', 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, $2)`,
    [yardId, at],
  );
  await database.query(`insert into crew_member values ($1, $2, 'Renske', 'manager', 'en', 3100, null, false)`, [managerId, yardId]);
  await database.query(`insert into device values ($1, $2, 'Tablet', 'hand', $3, $4, null, null)`, [deviceId, yardId, randomBytes(32), at]);
  await app.init();
  return house;
}
