import { Controller } from '@nestjs/common';
import { type Health, routes } from '@stokehold/domain/contract';
import { Identity } from '../identity/index.js';
import { Answers } from '../platform/index.js';
import { VERSION } from './version.js';

@Controller()
export class HealthController {
  constructor(private readonly identity: Identity) {}

  @Answers(routes.health)
  async health(): Promise<Health> {
    try {
      return { status: 'ready', firstRunNeeded: !(await this.identity.hasManager()), version: VERSION };
    } catch {
      return { status: 'database-away', firstRunNeeded: false, version: VERSION };
    }
  }
}
