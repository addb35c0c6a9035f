import { Controller } from '@nestjs/common';
import { type Done, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Alarms } from './alarms.service.js';

@Controller()
export class AlarmsController {
  constructor(private readonly alarms: Alarms) {}

  @Answers(routes.acknowledgeAlarm)
  acknowledge(@Input() input: RouteInput<Routes['acknowledgeAlarm']>, @By() actor: Actor): Promise<Done> {
    return this.alarms.acknowledge(actor, input);
  }
}
