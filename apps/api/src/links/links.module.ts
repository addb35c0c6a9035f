import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { GatewaysModule } from '../gateways/index.js';
import { IdentityModule } from '../identity/index.js';
import { PitsModule } from '../pits/index.js';
import { Calendars } from './calendars.service.js';
import { CalendarAddressRow, LinkMessageRow, WebhookRow } from './link.rows.js';
import { LinksController } from './links.controller.js';
import { Links } from './links.service.js';
import { Metrics } from './metrics.js';
import { ToldOutside } from './told-outside.js';

@Module({
  imports: [TypeOrmModule.forFeature([WebhookRow, LinkMessageRow, CalendarAddressRow]), GatewaysModule, IdentityModule, PitsModule],
  controllers: [LinksController],
  providers: [Links, Calendars, Metrics, ToldOutside],
})
export class LinksModule {}
