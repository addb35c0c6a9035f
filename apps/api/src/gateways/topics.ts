import type { DeviceId, YardId } from '@stokehold/domain/quantity';

/** The topics of gateways: stokehold/YARD/GATEWAY/readings and /status, ids as the house shows them. */
export const READINGS_TOPIC = 'stokehold/+/+/readings';
export const STATUS_TOPIC = 'stokehold/+/+/status';

export interface GatewayTopic {
  readonly yardId: YardId;
  readonly deviceId: DeviceId;
  readonly what: 'readings' | 'status';
}

const UUID = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const TOPIC = new RegExp(`^stokehold/(${UUID})/(${UUID})/(readings|status)$`);

/** Undefined for a topic of another form. */
export function gatewayTopic(topic: string): GatewayTopic | undefined {
  const [, yardId, deviceId, what] = TOPIC.exec(topic) ?? [];
  return what === undefined ? undefined : { yardId: yardId as YardId, deviceId: deviceId as DeviceId, what: what as GatewayTopic['what'] };
}
