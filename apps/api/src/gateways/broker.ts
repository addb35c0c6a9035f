import { type BeforeApplicationShutdown, Injectable } from '@nestjs/common';
import { connectAsync, type IPublishPacket, type MqttClient } from 'mqtt';
import { DataSource, type QueryRunner } from 'typeorm';
import { log } from '../platform/index.js';
import { GatewayMessages } from './gateway-messages.js';
import { READINGS_TOPIC, STATUS_TOPIC } from './topics.js';

/** Where the broker is, and by which name the house is known there: it keeps for that name what comes while the house is away. */
export interface BrokerSettings {
  readonly url: string;
  readonly clientId: string;
  /** For so long; a week when left out, s. */
  readonly keepsForS?: number;
}

const WEEK_S = 7 * 86_400;
/** So many messages may be under way before the first is answered; the broker waits with the rest. */
const MOST_UNDER_WAY = 16;
const LARGEST_BYTES = 262_144;
const AGAIN_MS = 2000;
/** A message that the house could not take in, for want of its database, is tried again after so long, and each time later. */
const TRY_AGAIN_MS = [200, 1000, 5000, 15_000] as const;
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * The house's end of an MQTT 5 broker. One process of the house at a time holds it, by a lock of the database: the broker knows the
 * house by one name. A message is answered only when it is kept, so that none is lost when the house falls.
 */
@Injectable()
export class Broker implements BeforeApplicationShutdown {
  private client: MqttClient | undefined;
  private lease: QueryRunner | undefined;
  private closed = false;

  constructor(
    private readonly messages: GatewayMessages,
    private readonly database: DataSource,
  ) {}

  /** Takes the broker when no other process has it, and keeps trying while one has. Returns when it is held, or the house closes. */
  async open(settings: BrokerSettings): Promise<void> {
    while (!this.closed && !(await this.takeLease())) await wait(AGAIN_MS);
    while (!this.closed && !this.client) {
      this.client = await connectAsync(settings.url, {
        protocolVersion: 5, clientId: settings.clientId, clean: false, reconnectPeriod: AGAIN_MS, connectTimeout: 5000,
        properties: { sessionExpiryInterval: settings.keepsForS ?? WEEK_S, receiveMaximum: MOST_UNDER_WAY, maximumPacketSize: LARGEST_BYTES },
      }).catch((error: Error) => {
        log.warn({ err: error.message }, 'the broker of MQTT_URL does not answer; it is tried again');
        return undefined;
      });
      if (!this.client) await wait(AGAIN_MS);
    }
    if (this.client) await this.listen(this.client);
  }

  get isThere(): boolean {
    return this.client?.connected ?? false;
  }

  /** Hands a message to the broker; false where there is none at the moment. */
  async publish(topic: string, payload: string): Promise<boolean> {
    if (!this.client?.connected) return false;
    await this.client.publishAsync(topic, payload, { qos: 1 });
    return true;
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.closed = true;
    await this.client?.endAsync().catch(() => undefined);
    await this.lease?.release();
  }

  private async listen(client: MqttClient): Promise<void> {
    client.on('error', (error) => log.warn({ err: error.message }, 'trouble with the broker'));
    client.handleMessage = (packet, done) => void this.keep(packet as IPublishPacket).then(() => done(), (error: Error) => done(error));
    await client.subscribeAsync({ [READINGS_TOPIC]: { qos: 1 }, [STATUS_TOPIC]: { qos: 1 } });
  }

  /** A message that cannot be taken in as it is, is named in the log and let go: it would be the same the next time. */
  private async keep({ topic, payload, properties }: IPublishPacket): Promise<void> {
    const given = { topic, payload: Buffer.from(payload), signature: (properties?.userProperties as Record<string, unknown> | undefined)?.['signature'] };
    for (let nth = 0; !this.closed; nth += 1) {
      try {
        const taken = await this.messages.take(given);
        if (!taken.taken) log.warn({ topic, trouble: taken.trouble, wants: taken.wants }, 'a message of a gateway was not taken in');
        return;
      } catch (error) {
        log.error({ err: (error as Error).message, topic }, 'a message of a gateway could not be kept; it is tried again');
        await wait(TRY_AGAIN_MS[Math.min(nth, TRY_AGAIN_MS.length - 1)]!);
      }
    }
    throw new Error('The house closes; the broker brings this message again.');
  }

  private async takeLease(): Promise<boolean> {
    const runner = this.lease ?? this.database.createQueryRunner();
    this.lease = runner;
    const [{ mine }] = (await runner.query(`select pg_try_advisory_lock(hashtext('the broker')) as mine`)) as [{ mine: boolean }];
    return mine;
  }
}
