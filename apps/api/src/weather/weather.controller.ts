import { Controller } from '@nestjs/common';
import { type Done, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { WeatherNow } from './weather.service.js';

@Controller()
export class WeatherController {
  constructor(private readonly weather: WeatherNow) {}

  @Answers(routes.recordWeather)
  record(@Input() input: RouteInput<Routes['recordWeather']>, @By() actor: Actor): Promise<Done> {
    return this.weather.record(actor, input);
  }
}
