import { Controller } from '@nestjs/common';
import { type Done, type ProbeCourses, type ProbesView, type ReadingsPasted, type ReadingsRecorded, type RouteInput, routes, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Probes } from './probes.service.js';
import { Readings } from './readings.service.js';

@Controller()
export class ReadingsController {
  constructor(
    private readonly readings: Readings,
    private readonly probes: Probes,
  ) {}

  @Answers(routes.recordReadings)
  record(@Input() input: RouteInput<Routes['recordReadings']>, @By() actor: Actor): Promise<ReadingsRecorded> {
    return this.readings.record(actor, input);
  }

  @Answers(routes.pasteReadings)
  paste(@Input() input: RouteInput<Routes['pasteReadings']>, @By() actor: Actor): Promise<ReadingsPasted> {
    return this.readings.paste(actor, input);
  }

  @Answers(routes.assignSource)
  assign(@Input() input: RouteInput<Routes['assignSource']>, @By() actor: Actor): Promise<ReadingsRecorded> {
    return this.readings.assign(actor, input);
  }

  @Answers(routes.probeCourses)
  courses(@Input() input: RouteInput<Routes['probeCourses']>, @By() actor: Actor): Promise<ProbeCourses> {
    return this.readings.courses(actor, input);
  }

  @Answers(routes.probes)
  view(@By() actor: Actor): Promise<ProbesView> {
    return this.probes.view(actor);
  }

  @Answers(routes.calibrateProbe)
  calibrate(@Input() input: RouteInput<Routes['calibrateProbe']>, @By() actor: Actor): Promise<Done> {
    return this.probes.calibrate(actor, input);
  }
}
