import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { IdentityModule } from '../identity/index.js';
import { ReadingsModule } from '../readings/index.js';
import { Broker } from './broker.js';
import { GatewayMessages } from './gateway-messages.js';
import { GatewayStatusRow } from './gateway-status.row.js';

@Module({
  imports: [TypeOrmModule.forFeature([GatewayStatusRow]), IdentityModule, ReadingsModule],
  providers: [Broker, GatewayMessages],
  exports: [Broker, GatewayMessages],
})
export class GatewaysModule {}
