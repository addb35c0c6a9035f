import { type DynamicModule, Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { Clock } from './clock.js';
import { Commands } from './commands.js';
import { DataFolder } from './data-folder.js';
import { Ids } from './ids.js';
import { TheNight1790000000000 } from './migrations/1790000000000-the-night.js';
import { Outbox } from './outbox.js';
import { PreparedClient } from './prepared-client.js';
import { Deeds } from './transaction.js';
import { Workers } from './workers.js';

const PROVIDERS = [Clock, Ids, Deeds, Outbox, Commands];

/** What every other module stands on: the database, the clock, ids, commands, the outbox and the worker threads. */
@Module({})
export class PlatformModule {
  static on(options: { readonly databaseUrl: string; readonly workers: number; readonly connections?: number; readonly dataFolder: string }): DynamicModule {
    return {
      module: PlatformModule,
      global: true,
      imports: [
        TypeOrmModule.forRoot({
          type: 'postgres',
          url: options.databaseUrl,
          autoLoadEntities: true,
          migrations: [TheNight1790000000000],
          migrationsRun: true,
          migrationsTransactionMode: 'all',
          extra: { max: options.connections ?? 10, Client: PreparedClient },
          retryAttempts: 3,
          retryDelay: 500,
        }),
      ],
      providers: [...PROVIDERS, { provide: DataFolder, useValue: new DataFolder(options.dataFolder) }, { provide: Workers, useFactory: () => new Workers(options.workers) }],
      exports: [...PROVIDERS, DataFolder, Workers],
    };
  }
}
