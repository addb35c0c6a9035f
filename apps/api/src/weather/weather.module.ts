import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { WeatherController } from './weather.controller.js';
import { WeatherRow } from './weather.row.js';
import { WeatherNow } from './weather.service.js';
import { WeatherStore } from './weather.store.js';

@Module({
  imports: [TypeOrmModule.forFeature([WeatherRow])],
  controllers: [WeatherController],
  providers: [WeatherNow, WeatherStore],
  exports: [WeatherNow],
})
export class WeatherModule {}
