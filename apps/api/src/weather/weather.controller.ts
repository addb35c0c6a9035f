import { Controller } from '@nestjs/common';
import { type Done, type ForecastView, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Forecasts } from './forecasts.service.js';
import { WeatherNow } from './weather.service.js';

@Controller()
export class WeatherController {
  constructor(
    private readonly weather: WeatherNow,
    private readonly forecasts: Forecasts,
  ) {}

  @Answers(routes.forecast)
  forecast(@By() actor: Actor): Promise<ForecastView> {
    return this.forecasts.view(actor);
  }

  @Answers(routes.recordWeather)
  record(@Input() input: RouteInput<Routes['recordWeather']>, @By() actor: Actor): Promise<Done> {
    return this.weather.record(actor, input);
  }
}
