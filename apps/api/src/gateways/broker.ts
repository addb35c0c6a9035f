import { type BeforeApplicationShutdown, Injectable } from '@nestjs/common';
import { connectAsync, type IPublishPacket, type MqttClient } from 'mqtt';
import { Leading, log } from '../platform/index.js';
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
 * The house's end of an MQTT 5 broker. The process that leads holds it: the broker knows the house by one name. A message is
 * answered only when it is kept, so that none is lost when the house falls.
 */
@Injectable()
export class Broker implements BeforeApplicationShutdown {
  private client: MqttClient | undefined;
  private wanted = false;
  private set = false;
  /** Taking and letting go, one after the other, however quickly the lead changes. */
  private line = Promise.resolve();

  constructor(
    private readonly messages: GatewayMessages,
    private readonly leading: Leading,
  ) {}

  /** Takes the broker while this process leads the house. Returns when it has it for the first time. */
  open(settings: BrokerSettings): Promise<void> {
    this.set = true;
    return new Promise((opened, failed) => {
      this.leading.whileLeading({
        begin: () => {
          this.wanted = true;
          this.line = this.line.then(() => this.take(settings)).then(opened, failed);
        },
        end: () => void this.letGo(),
      });
    });
  }

  private async take(settings: BrokerSettings): Promise<void> {
    while (this.wanted && !this.client) {
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

  /** Whether a broker is set at all. */
  get isSet(): boolean {
    return this.set;
  }

  /** Whether it is for this process to hold the broker. */
  get isMine(): boolean {
    return this.wanted;
  }

  /** Hands a message to the broker; false where there is none at the moment. */
  async publish(topic: string, payload: string): Promise<boolean> {
    if (!this.client?.connected) return false;
    await this.client.publishAsync(topic, payload, { qos: 1 });
    return true;
  }

  async beforeApplicationShutdown(): Promise<void> {
    await this.letGo();
  }

  private letGo(): Promise<void> {
    this.wanted = false;
    this.line = this.line.then(async () => {
      await this.client?.endAsync().catch((error: Error) => log.warn({ err: error.message }, 'the broker was not let go in order'));
      this.client = undefined;
    });
    return this.line;
  }

  private async listen(client: MqttClient): Promise<void> {
    client.on('error', (error) => log.warn({ err: error.message }, 'trouble with the broker'));
    client.handleMessage = (packet, done) => void this.keep(packet as IPublishPacket).then(() => done(), (error: Error) => done(error));
    await client.subscribeAsync({ [READINGS_TOPIC]: { qos: 1 }, [STATUS_TOPIC]: { qos: 1 } });
  }

  /** A message that cannot be taken in as it is, is named in the log and let go: it would be the same the next time. */
  private async keep({ topic, payload, properties }: IPublishPacket): Promise<void> {
    const given = { topic, payload: Buffer.from(payload), signature: (properties?.userProperties as Record<string, unknown> | undefined)?.['signature'] };
    for (let nth = 0; this.wanted; nth += 1) {
      try {
        const taken = await this.messages.take(given);
        if (!taken.taken) log.warn({ topic, trouble: taken.trouble, wants: taken.wants }, 'a message of a gateway was not taken in');
        return;
      } catch (error) {
        log.error({ err: (error as Error).message, topic }, 'a message of a gateway could not be kept; it is tried again');
        await wait(TRY_AGAIN_MS[Math.min(nth, TRY_AGAIN_MS.length - 1)]!);
      }
    }
    throw new Error('This process lets the broker go; the broker brings this message again.');
  }
}
