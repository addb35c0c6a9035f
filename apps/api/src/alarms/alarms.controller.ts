import { Controller } from '@nestjs/common';
import { type AlarmReport, type Done, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Alarms } from './alarms.service.js';

@Controller()
export class AlarmsController {
  constructor(private readonly alarms: Alarms) {}

  @Answers(routes.acknowledgeAlarm)
  acknowledge(@Input() input: RouteInput<Routes['acknowledgeAlarm']>, @By() actor: Actor): Promise<Done> {
    return this.alarms.acknowledge(actor, input);
  }

  @Answers(routes.shelveAlarm)
  shelve(@Input() input: RouteInput<Routes['shelveAlarm']>, @By() actor: Actor): Promise<Done> {
    return this.alarms.shelve(actor, input);
  }

  @Answers(routes.unshelveAlarm)
  unshelve(@Input() input: RouteInput<Routes['unshelveAlarm']>, @By() actor: Actor): Promise<Done> {
    return this.alarms.unshelve(actor, input);
  }

  @Answers(routes.alarmReport)
  report(@Input() input: RouteInput<Routes['alarmReport']>, @By() actor: Actor): Promise<AlarmReport> {
    return this.alarms.report(actor, input);
  }
}
