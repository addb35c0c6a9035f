import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Offcuts } from './offcuts.service.js';
import { Wood } from './wood.service.js';

@Controller()
export class WoodController {
  constructor(
    private readonly wood: Wood,
    private readonly offcuts: Offcuts,
  ) {}

  @Answers(routes.buyLot)
  buy(@Input() input: RouteInput<Routes['buyLot']>, @By() actor: Actor) {
    return this.wood.buy(actor, input);
  }

  @Answers(routes.measureLot)
  measure(@Input() input: RouteInput<Routes['measureLot']>, @By() actor: Actor) {
    return this.wood.measure(actor, input);
  }

  @Answers(routes.readLot)
  read(@Input() input: RouteInput<Routes['readLot']>, @By() actor: Actor) {
    return this.wood.read(actor, input);
  }

  @Answers(routes.moveWood)
  move(@Input() input: RouteInput<Routes['moveWood']>, @By() actor: Actor) {
    return this.wood.move(actor, input);
  }

  @Answers(routes.recountLot)
  recount(@Input() input: RouteInput<Routes['recountLot']>, @By() actor: Actor) {
    return this.wood.recount(actor, input);
  }

  @Answers(routes.trimSplits)
  trim(@Input() input: RouteInput<Routes['trimSplits']>, @By() actor: Actor) {
    return this.offcuts.trim(actor, input);
  }

  @Answers(routes.burnOffcuts)
  burnOffcuts(@Input() input: RouteInput<Routes['burnOffcuts']>, @By() actor: Actor) {
    return this.offcuts.burnAtLighting(actor, input);
  }

  @Answers(routes.recountOffcuts)
  recountOffcuts(@Input() input: RouteInput<Routes['recountOffcuts']>, @By() actor: Actor) {
    return this.offcuts.recount(actor, input);
  }
}
