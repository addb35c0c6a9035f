import { Module } from '@nestjs/common';
import { IdentityModule } from '../identity/index.js';
import { HealthController } from './health.controller.js';

@Module({ imports: [IdentityModule], controllers: [HealthController] })
export class HealthModule {}
