export { Broker, type BrokerSettings } from './broker.js';
export { GatewayMessages } from './gateway-messages.js';
export { GatewaysModule } from './gateways.module.js';
export { signatureOf } from './signature.js';
