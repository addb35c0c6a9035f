import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Food } from './food.service.js';

@Controller()
export class FoodController {
  constructor(private readonly food: Food) {}

  @Answers(routes.saveCook)
  saveCook(@Input() input: RouteInput<Routes['saveCook']>, @By() actor: Actor) {
    return this.food.saveCook(actor, input);
  }

  @Answers(routes.placeCook)
  place(@Input() input: RouteInput<Routes['placeCook']>, @By() actor: Actor) {
    return this.food.place(actor, input);
  }

  @Answers(routes.takeOff)
  takeOff(@Input() input: RouteInput<Routes['takeOff']>, @By() actor: Actor) {
    return this.food.takeOff(actor, input);
  }

  @Answers(routes.saveService)
  saveService(@Input() input: RouteInput<Routes['saveService']>, @By() actor: Actor) {
    return this.food.saveService(actor, input);
  }
}
