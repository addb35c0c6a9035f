import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import type { PersonId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { SecretKey } from './secret-key.js';

const isPin = (typed: string) => /^\d{6}$/.test(typed);
/** Keyboards write one letter in several ways (NIST SP 800-63B: NFKC). */
const asKept = (typed: string) => typed.normalize('NFKC');

/** The least settings that OWASP advises for argon2id, which the package takes by default: 19 MiB, two passes, one lane. */
const SETTINGS = { memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 } as const;

/** PINs, and the passwords of those who have one in its place, as the house keeps them: argon2id with a key that is not in the database. */
@Injectable()
export class Pins {
  constructor(private readonly key: SecretKey) {}

  hash(pin: string): Promise<string> {
    return hash(asKept(pin), { ...SETTINGS, secret: this.key.bytes() });
  }

  isRight(kept: string, pin: string): Promise<boolean> {
    return verify(kept, asKept(pin), { secret: this.key.bytes() });
  }

  /** Gives a person a new PIN or password; wrong tries of the old one are forgotten. */
  async set(em: EntityManager, personId: PersonId, pin: string): Promise<void> {
    await em.query('update crew_member set pin_hash = $2, by_password = $3 where id = $1', [personId, await this.hash(pin), !isPin(pin)]);
    await em.query('delete from pin_failure where crew_member_id = $1', [personId]);
  }

  /** Stands for the PIN where a command is compared with its repetition: a plain hash of six digits would give them away. */
  inCommand(pin: string): string {
    return this.key.mac('pin-in-command', pin).toString('base64url');
  }
}
