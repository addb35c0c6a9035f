import { Injectable } from '@nestjs/common';
import { recordReadings } from '@stokehold/domain/contract';
import { type DeviceId, epochS, type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { createHash } from 'node:crypto';
import { DataSource, type EntityManager } from 'typeorm';
import { Identity } from '../identity/index.js';
import { Clock, RefusalError } from '../platform/index.js';
import { Readings } from '../readings/index.js';
import { isSigned } from './signature.js';
import { gatewayTopic } from './topics.js';

/** A message as the broker hands it over. */
export interface GatewayMessage {
  readonly topic: string;
  readonly payload: Buffer;
  /** The user property `signature`. */
  readonly signature: unknown;
}
/** Why a message was not taken in: the same message sent again would not be either. */
export type MessageTrouble = 'topic-unknown' | 'gateway-unknown' | 'signature-wrong' | 'not-json' | 'not-readings' | 'not-a-status' | 'refused';
export type Taken = { readonly taken: true } | { readonly taken: false; readonly trouble: MessageTrouble; readonly wants: string };

const TAKEN: Taken = { taken: true };
const not = (trouble: MessageTrouble, wants: string): Taken => ({ taken: false, trouble, wants });
/** The body of POST /readings; the key may be left out, for a message that the broker brings twice has the same bytes. */
const message = recordReadings.partial({ key: true });

/** Takes in what gateways send over a broker, as the same commands that they would send over HTTP. */
@Injectable()
export class GatewayMessages {
  constructor(
    private readonly identity: Identity,
    private readonly readings: Readings,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  /** Throws only where the house itself could not: then the message is to be tried again. */
  async take({ topic, payload, signature }: GatewayMessage): Promise<Taken> {
    const of = gatewayTopic(topic);
    if (!of) return not('topic-unknown', 'stokehold/YARD/GATEWAY/readings or /status, with ids as the house shows them');
    const gateway = await this.identity.gateway(of.deviceId);
    if (!gateway || gateway.actor.yardId !== of.yardId) return not('gateway-unknown', 'a gateway that is enrolled in this yard and not revoked');
    if (!isSigned(payload, gateway.tokenHash, signature)) return not('signature-wrong', 'the user property signature: HMAC-SHA256 of the payload under the SHA-256 of the token, in hex');
    if (of.what === 'status') return this.takeStatus(of.deviceId, payload.toString('utf8'), this.clock.now(of.yardId));
    let body: unknown;
    try {
      body = JSON.parse(payload.toString('utf8'));
    } catch {
      return not('not-json', 'JSON as POST /api/readings takes it');
    }
    const read = message.safeParse(body);
    if (!read.success) return not('not-readings', read.error.issues.slice(0, 5).map((issue) => `${issue.path.join('.')}: ${issue.message}`).join('; '));
    try {
      await this.readings.record(gateway.actor, { ...read.data, key: read.data.key ?? keyOf(of.deviceId, payload) });
      return TAKEN;
    } catch (error) {
      if (error instanceof RefusalError) return not('refused', error.message);
      throw error;
    }
  }

  /** Gateways of a yard whose last will was told at least so long ago. */
  async silent(em: EntityManager, yardId: YardId, before: EpochS): Promise<DeviceId[]> {
    const rows = (await em.query(
      'select device.id from gateway_status join device on device.id = device_id where yard_id = $1 and revoked_at is null and silent_since <= $2 order by device.id',
      [yardId, toIso(before)],
    )) as { id: DeviceId }[];
    return rows.map(({ id }) => id);
  }

  private async takeStatus(deviceId: DeviceId, status: string, now: EpochS): Promise<Taken> {
    if (status !== 'online' && status !== 'offline') return not('not-a-status', 'online or offline');
    await this.database.manager.query(
      `insert into gateway_status (device_id, silent_since) values ($1, $2)
       on conflict (device_id) do update set silent_since = case when excluded.silent_since is null then null else coalesce(gateway_status.silent_since, excluded.silent_since) end`,
      [deviceId, status === 'offline' ? toIso(epochS(now)) : null],
    );
    return TAKEN;
  }
}

/** The same bytes of the same gateway are the same command. A UUID of version 8, RFC 9562. */
function keyOf(deviceId: DeviceId, payload: Buffer): string {
  const hash = createHash('sha256').update(deviceId).update(payload).digest();
  hash[6] = (hash[6]! & 0x0f) | 0x80;
  hash[8] = (hash[8]! & 0x3f) | 0x80;
  return hash.toString('hex', 0, 16).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

