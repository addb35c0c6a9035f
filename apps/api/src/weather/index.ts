export { Forecasts } from './forecasts.service.js';
export { WeatherModule } from './weather.module.js';
export { WeatherNow } from './weather.service.js';
