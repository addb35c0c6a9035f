import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Wood } from './wood.service.js';

@Controller()
export class WoodController {
  constructor(private readonly wood: Wood) {}

  @Answers(routes.buyLot)
  buy(@Input() input: RouteInput<Routes['buyLot']>, @By() actor: Actor) {
    return this.wood.buy(actor, input);
  }

  @Answers(routes.measureLot)
  measure(@Input() input: RouteInput<Routes['measureLot']>, @By() actor: Actor) {
    return this.wood.measure(actor, input);
  }

  @Answers(routes.moveWood)
  move(@Input() input: RouteInput<Routes['moveWood']>, @By() actor: Actor) {
    return this.wood.move(actor, input);
  }

  @Answers(routes.recountLot)
  recount(@Input() input: RouteInput<Routes['recountLot']>, @By() actor: Actor) {
    return this.wood.recount(actor, input);
  }
}
