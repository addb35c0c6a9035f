import { Controller } from '@nestjs/common';
import { type Health, routes } from '@stokehold/domain/contract';
import { setTimeout as pause } from 'node:timers/promises';
import { Identity } from '../identity/index.js';
import { Answers } from '../platform/index.js';
import { VERSION } from './version.js';

/** A database that takes longer does not answer: what watches the house asks every few seconds. */
const ANSWER_WITHIN_MS = 2000;

@Controller()
export class HealthController {
  constructor(private readonly identity: Identity) {}

  @Answers(routes.health)
  async health(): Promise<Health> {
    try {
      return { status: 'ready', firstRunNeeded: !(await inTime(this.identity.hasManager())), version: VERSION };
    } catch {
      return { status: 'database-away', firstRunNeeded: false, version: VERSION };
    }
  }
}

async function inTime<T>(asked: Promise<T>): Promise<T> {
  const done = new AbortController();
  const tooLate = pause(ANSWER_WITHIN_MS, undefined, { signal: done.signal, ref: false }).then(() => Promise.reject(new Error('no answer in time')));
  tooLate.catch(() => undefined);
  return Promise.race([asked, tooLate]).finally(() => done.abort());
}
