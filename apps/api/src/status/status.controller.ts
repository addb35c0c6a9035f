import { Controller } from '@nestjs/common';
import { type HouseStatus, routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By } from '../platform/index.js';
import { Status } from './status.service.js';

@Controller()
export class StatusController {
  constructor(private readonly status: Status) {}

  @Answers(routes.status)
  view(@By() actor: Actor): Promise<HouseStatus> {
    return this.status.view(actor);
  }
}
