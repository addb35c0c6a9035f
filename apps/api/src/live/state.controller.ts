import { Controller } from '@nestjs/common';
import { routes, type YardState } from '@stokehold/domain/contract';
import { type Actor, Answers, By } from '../platform/index.js';
import { StateOf } from './state-of.service.js';

@Controller()
export class StateController {
  constructor(private readonly stateOf: StateOf) {}

  @Answers(routes.state)
  state(@By() actor: Actor): Promise<YardState> {
    return this.stateOf.state(actor.yardId);
  }
}
