import { Controller } from '@nestjs/common';
import { type Done, routes, type RouteInput, type Routes, type Setup } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Crew } from './crew.service.js';
import { Yards } from './yards.service.js';

@Controller()
export class YardsController {
  constructor(
    private readonly yards: Yards,
    private readonly crew: Crew,
  ) {}

  @Answers(routes.setup)
  setup(@By() actor: Actor): Promise<Setup> {
    return this.yards.setup(actor);
  }

  @Answers(routes.saveYard)
  saveYard(@Input() input: RouteInput<Routes['saveYard']>, @By() actor: Actor): Promise<Done> {
    return this.yards.save(actor, input);
  }

  @Answers(routes.savePit)
  savePit(@Input() input: RouteInput<Routes['savePit']>, @By() actor: Actor): Promise<Done> {
    return this.yards.savePit(actor, input);
  }

  @Answers(routes.saveCrewMember)
  saveCrewMember(@Input() input: RouteInput<Routes['saveCrewMember']>, @By() actor: Actor): Promise<Done> {
    return this.crew.save(actor, input);
  }
}
