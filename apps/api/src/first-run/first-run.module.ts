import { Module } from '@nestjs/common';
import { IdentityModule } from '../identity/index.js';
import { YardsModule } from '../yards/index.js';
import { FirstRunController } from './first-run.controller.js';
import { FirstRuns } from './first-run.service.js';

@Module({ imports: [IdentityModule, YardsModule], controllers: [FirstRunController], providers: [FirstRuns] })
export class FirstRunModule {}
