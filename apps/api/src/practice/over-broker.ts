import type { RecordReadings } from '@stokehold/domain/contract';
import type { DeviceId, YardId } from '@stokehold/domain/quantity';
import { connectAsync, type MqttClient } from 'mqtt';
import { createHash } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { signatureOf } from '../gateways/index.js';

/** How often the house is asked whether it has kept a message, and how often before that is given up. */
const ASK_EVERY_MS = 2;
const ASK_MOST = 15_000;

/** The practice gateway at its own end of a broker: signs what it sends as any gateway of a yard does. */
export class GatewayOverBroker {
  private constructor(
    private readonly client: MqttClient,
    private readonly topic: string,
    private readonly tokenHash: Buffer,
    /** Whether the house has kept the message of this key. */
    private readonly isKept: (key: string) => Promise<boolean>,
  ) {}

  static async open(url: string, gateway: { readonly yardId: YardId; readonly deviceId: DeviceId; readonly token: string }, isKept: (key: string) => Promise<boolean>): Promise<GatewayOverBroker> {
    const client = await connectAsync(url, { protocolVersion: 5, connectTimeout: 5000 });
    const tokenHash = createHash('sha256').update(gateway.token).digest();
    return new GatewayOverBroker(client, `stokehold/${gateway.yardId}/${gateway.deviceId}/readings`, tokenHash, isKept);
  }

  /** Done once the house has kept it, so that a night over a broker goes as one without. */
  async send(command: RecordReadings): Promise<void> {
    const payload = JSON.stringify(command);
    await this.client.publishAsync(this.topic, payload, { qos: 1, properties: { userProperties: { signature: signatureOf(Buffer.from(payload), this.tokenHash) } } });
    for (let nth = 0; !(await this.isKept(command.key)); nth++) {
      if (nth === ASK_MOST) throw new Error('The broker took a message of the practice night, and it did not come out of it.');
      await wait(ASK_EVERY_MS);
    }
  }

  async close(): Promise<void> {
    await this.client.endAsync();
  }
}
