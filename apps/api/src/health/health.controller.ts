import { Controller } from '@nestjs/common';
import { type Health, routes } from '@stokehold/domain/contract';
import { DataSource } from 'typeorm';
import { Answers } from '../platform/index.js';
import { VERSION } from './version.js';

@Controller()
export class HealthController {
  constructor(private readonly database: DataSource) {}

  @Answers(routes.health)
  async health(): Promise<Health> {
    try {
      const [found] = (await this.database.query("select exists (select from crew_member where role = 'manager' and not has_left) as manager")) as [{ manager: boolean }];
      return { status: 'ready', firstRunNeeded: !found.manager, version: VERSION };
    } catch {
      return { status: 'database-away', firstRunNeeded: false, version: VERSION };
    }
  }
}
