import { Controller } from '@nestjs/common';
import { type RouteInput, routes, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Readings } from './readings.service.js';

@Controller()
export class ReadingsController {
  constructor(private readonly readings: Readings) {}

  @Answers(routes.recordReadings)
  record(@Input() input: RouteInput<Routes['recordReadings']>, @By() actor: Actor) {
    return this.readings.record(actor, input);
  }
}
