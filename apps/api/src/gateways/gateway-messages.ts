import { Injectable } from '@nestjs/common';
import { recordReadings } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Identity } from '../identity/index.js';
import { type Deed, Deeds, Outbox, RefusalError, Remembered } from '../platform/index.js';
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

/** A gateway whose last will was told, and when. */
interface SilentGateway {
  readonly id: DeviceId;
  readonly sinceS: number;
}

/** Takes in what gateways send over a broker, as the same commands that they would send over HTTP. */
@Injectable()
export class GatewayMessages {
  private readonly remembered = new Remembered<SilentGateway[]>(['gateway-changed']);

  constructor(
    private readonly identity: Identity,
    private readonly readings: Readings,
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
  ) {}

  /** Throws only where the house itself could not: then the message is to be tried again. */
  async take({ topic, payload, signature }: GatewayMessage): Promise<Taken> {
    const of = gatewayTopic(topic);
    if (!of) return not('topic-unknown', 'stokehold/YARD/GATEWAY/readings or /status, with ids as the house shows them');
    const gateway = await this.identity.gateway(of.deviceId);
    if (!gateway || gateway.actor.yardId !== of.yardId) return not('gateway-unknown', 'a gateway that is enrolled in this yard and not revoked');
    if (!isSigned(payload, gateway.tokenHash, signature)) return not('signature-wrong', 'the user property signature: HMAC-SHA256 of the payload under the SHA-256 of the token, in hex');
    if (of.what === 'status') return this.takeStatus(of, payload.toString('utf8'));
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
    const silent = await this.remembered.once(em, yardId, () => em.query(
      `select device.id, extract(epoch from silent_since)::float8 as "sinceS" from gateway_status join device on device.id = device_id
       where yard_id = $1 and revoked_at is null and silent_since is not null order by device.id`,
      [yardId],
    ));
    return silent.filter(({ sinceS }) => sinceS <= before).map(({ id }) => id);
  }

  private async takeStatus({ yardId, deviceId }: { readonly yardId: YardId; readonly deviceId: DeviceId }, status: string): Promise<Taken> {
    if (status !== 'online' && status !== 'offline') return not('not-a-status', 'online or offline');
    await this.deeds.run(yardId, (deed) => this.keepStatus(deed, deviceId, status));
    this.outbox.poke(yardId);
    return TAKEN;
  }

  /** A status that says nothing new is no fact: the broker brings the last one again whenever somebody subscribes. */
  private async keepStatus(deed: Deed, deviceId: DeviceId, status: 'online' | 'offline'): Promise<void> {
    const changed = (await deed.em.query(
      `insert into gateway_status (device_id, silent_since) values ($1, $2) on conflict (device_id) do update set silent_since = excluded.silent_since
       where (gateway_status.silent_since is null) <> (excluded.silent_since is null) returning device_id`,
      [deviceId, status === 'offline' ? toIso(deed.now) : null],
    )) as unknown[];
    if (changed.length > 0) deed.tell({ kind: 'gateway-changed', deviceId });
  }
}

/** The same bytes of the same gateway are the same command. A UUID of version 8, RFC 9562. */
function keyOf(deviceId: DeviceId, payload: Buffer): string {
  const hash = createHash('sha256').update(deviceId).update(payload).digest();
  hash[6] = (hash[6]! & 0x0f) | 0x80;
  hash[8] = (hash[8]! & 0x3f) | 0x80;
  return hash.toString('hex', 0, 16).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

