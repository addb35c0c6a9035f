import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ForecastRow } from './forecast.row.js';
import { Forecasts } from './forecasts.service.js';
import { WeatherController } from './weather.controller.js';
import { WeatherRow } from './weather.row.js';
import { WeatherNow } from './weather.service.js';
import { WeatherStore } from './weather.store.js';

@Module({
  imports: [TypeOrmModule.forFeature([WeatherRow, ForecastRow])],
  controllers: [WeatherController],
  providers: [Forecasts, WeatherNow, WeatherStore],
  exports: [Forecasts, WeatherNow],
})
export class WeatherModule {}
