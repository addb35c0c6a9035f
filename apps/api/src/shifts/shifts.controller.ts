import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Shifts } from './shifts.service.js';
import { Tasks } from './tasks.service.js';

@Controller()
export class ShiftsController {
  constructor(
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
  ) {}

  @Answers(routes.planShift)
  plan(@Input() input: RouteInput<Routes['planShift']>, @By() actor: Actor) {
    return this.shifts.plan(actor, input);
  }

  @Answers(routes.comingShifts)
  coming(@By() actor: Actor) {
    return this.shifts.coming(actor);
  }

  @Answers(routes.reportPresence)
  reportPresence(@Input() input: RouteInput<Routes['reportPresence']>, @By() actor: Actor) {
    return this.shifts.reportPresence(actor, input);
  }

  @Answers(routes.reportBreak)
  reportBreak(@Input() input: RouteInput<Routes['reportBreak']>, @By() actor: Actor) {
    return this.shifts.reportBreak(actor, input);
  }

  @Answers(routes.addTask)
  addTask(@Input() input: RouteInput<Routes['addTask']>, @By() actor: Actor) {
    return this.tasks.add(actor, input);
  }

  @Answers(routes.finishTask)
  finishTask(@Input() input: RouteInput<Routes['finishTask']>, @By() actor: Actor) {
    return this.tasks.finish(actor, input);
  }
}
