import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Records } from './records.service.js';

@Controller()
export class RecordsController {
  constructor(private readonly records: Records) {}

  @Answers(routes.recordNights)
  nights(@By() actor: Actor) {
    return this.records.nights(actor);
  }

  @Answers(routes.records)
  view(@Input() input: RouteInput<Routes['records']>, @By() actor: Actor) {
    return this.records.view(actor, input);
  }

  @Answers(routes.correctRecord)
  correct(@Input() input: RouteInput<Routes['correctRecord']>, @By() actor: Actor) {
    return this.records.correct(actor, input);
  }
}
