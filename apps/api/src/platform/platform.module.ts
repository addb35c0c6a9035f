import { type DynamicModule, Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { Clock } from './clock.js';
import { Commands } from './commands.js';
import { DataFolder } from './data-folder.js';
import { Disk } from './disk.js';
import { Ids } from './ids.js';
import { TheNight1790000000000 } from './migrations/1790000000000-the-night.js';
import { WhatWasTold1790000100000 } from './migrations/1790000100000-what-was-told.js';
import { BeliefsAsTheyAre1790000600000 } from './migrations/1790000600000-beliefs-as-they-are.js';
import { ZonesAsTheyWere1790000720000 } from './migrations/1790000720000-zones-as-they-were.js';
import { WhereTheYardLies1790000740000 } from './migrations/1790000740000-where-the-yard-lies.js';
import { WhoIsCalled1790000750000 } from './migrations/1790000750000-who-is-called.js';
import { ReadingsJudged1790000751000 } from './migrations/1790000751000-readings-judged.js';
import { GatewaysHeard1790000752000 } from './migrations/1790000752000-gateways-heard.js';
import { Forecasts1790000753000 } from './migrations/1790000753000-forecasts.js';
import { LinksOut1790000754000 } from './migrations/1790000754000-links-out.js';
import { DecisionsListed1790000756000 } from './migrations/1790000756000-decisions-listed.js';
import { RecordChained1790000760000 } from './migrations/1790000760000-record-chained.js';
import { RecordsKept1790000770000 } from './migrations/1790000770000-records-kept.js';
import { TheKitchensWood1790000780000 } from './migrations/1790000780000-the-kitchens-wood.js';
import { ComesBack1790000790000 } from './migrations/1790000790000-comes-back.js';
import { FactsInTheChain1790000800000 } from './migrations/1790000800000-facts-in-the-chain.js';
import { MonthsOnce1790000805000 } from './migrations/1790000805000-months-once.js';
import { OnePlace1790000815000 } from './migrations/1790000815000-one-place.js';
import { ReadingsByTime1790000820000 } from './migrations/1790000820000-readings-by-time.js';
import { WorkWaits1790000830000 } from './migrations/1790000830000-work-waits.js';
import { HouseSeen1790000847000 } from './migrations/1790000847000-house-seen.js';
import { Passwords1790000850000 } from './migrations/1790000850000-passwords.js';
import { WhatFoodDid1790000300000 } from './migrations/1790000300000-what-food-did.js';
import { PlansSearched1790000200000 } from './migrations/1790000200000-plans-searched.js';
import { WoodAndCost1790000500000 } from './migrations/1790000500000-wood-and-cost.js';
import { Offcuts1790000731000 } from './migrations/1790000731000-offcuts.js';
import { WoodAsItLies1790000730000 } from './migrations/1790000730000-wood-as-it-lies.js';
import { LeftBehind } from './left-behind.js';
import { Leading } from './leading.js';
import { Outbox } from './outbox.js';
import { PreparedClient } from './prepared-client.js';
import { Deeds } from './transaction.js';
import { WantOfRoom } from './want-of-room.js';
import { WorkQueue } from './work-queue.js';
import { Workers } from './workers.js';

const PROVIDERS = [Clock, Ids, Deeds, Outbox, Commands, WorkQueue, Disk, WantOfRoom];

/** Every change of the tables, the first ones first. */
export const MIGRATIONS = [
  TheNight1790000000000, WhatWasTold1790000100000, PlansSearched1790000200000, WhatFoodDid1790000300000, WoodAndCost1790000500000, BeliefsAsTheyAre1790000600000, ZonesAsTheyWere1790000720000,
  WoodAsItLies1790000730000, Offcuts1790000731000, WhereTheYardLies1790000740000,
  WhoIsCalled1790000750000, ReadingsJudged1790000751000, GatewaysHeard1790000752000, Forecasts1790000753000, LinksOut1790000754000,
  DecisionsListed1790000756000, RecordChained1790000760000, RecordsKept1790000770000, TheKitchensWood1790000780000, ComesBack1790000790000, FactsInTheChain1790000800000, MonthsOnce1790000805000,
  OnePlace1790000815000, ReadingsByTime1790000820000, WorkWaits1790000830000, HouseSeen1790000847000, Passwords1790000850000,
];

/** The folder of a socket that an address of the database names: TypeORM reads only what stands before the question mark. */
export function socketOf(databaseUrl: string): { readonly host?: string } {
  const host = new URL(databaseUrl).searchParams.get('host');
  return host ? { host } : {};
}

/** What every other module stands on: the database, the clock, ids, commands, the outbox and the worker threads. */
@Module({})
export class PlatformModule {
  static on(options: { readonly databaseUrl: string; readonly workers: number; readonly connections?: number; readonly dataFolder: string; readonly databaseInside?: boolean }): DynamicModule {
    return {
      module: PlatformModule,
      global: true,
      imports: [
        TypeOrmModule.forRoot({
          type: 'postgres',
          url: options.databaseUrl,
          autoLoadEntities: true,
          migrations: MIGRATIONS,
          migrationsRun: true,
          migrationsTransactionMode: 'all',
          extra: { max: options.connections ?? 10, Client: PreparedClient, pipeline: true, ...socketOf(options.databaseUrl) },
          retryAttempts: 3,
          retryDelay: 500,
        }),
      ],
      providers: [...PROVIDERS, LeftBehind, { provide: Leading, useFactory: () => new Leading(options.databaseUrl) }, { provide: DataFolder, useValue: new DataFolder(options.dataFolder, options.databaseInside) }, { provide: Workers, useFactory: () => new Workers(options.workers) }],
      exports: [...PROVIDERS, Leading, DataFolder, Workers],
    };
  }
}
