import type { NestExpressApplication } from '@nestjs/platform-express';
import { pin } from '@stokehold/domain/contract';
import { HOUR_S } from '@stokehold/domain/quantity';
import { randomInt } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { DataSource } from 'typeorm';
import type { PracticeAsked } from './arguments.js';
import { Enrolment } from './identity/index.js';
import { opensAfterS, PracticeNights, readSample, type SampleNight } from './practice/index.js';

const SAMPLE = fileURLToPath(new URL('../../../infra/sample/brackwater.json', import.meta.url));
/** Ten minutes of the night pass in one: something happens on the wall every few seconds. */
const SPEED = 10;
/** Unless asked otherwise the night opens when its fires burn. */
const SKIP_S = 2 * HOUR_S;

/** Six digits made for this one practice night; never one that everybody tries first. */
const practicePin = (): string => {
  for (;;) {
    const digits = String(randomInt(0, 1_000_000)).padStart(6, '0');
    if (pin.safeParse(digits).success) return digits;
  }
};

/** A practice night as it is to be opened. */
export interface PracticeOpening {
  readonly sample: SampleNight;
  readonly seed: number;
  /** So much of the night passes at once, s. */
  readonly skipS: number;
}

/** The sample's night as it was asked for; throws where the night has no such time. */
export function practiceOpening({ at, seed = randomInt(1, 1_000_000) }: PracticeAsked): PracticeOpening {
  const sample = readSample(SAMPLE);
  return { sample, seed, skipS: at === undefined ? SKIP_S : opensAfterS(sample, at) };
}

/** Opens a practice night; gives the lines that say how to look at it. `here`: where this machine opens the house. */
export async function openPractice(app: NestExpressApplication, { sample, seed, skipS }: PracticeOpening, here: string): Promise<string> {
  const night = await app.get(PracticeNights).openLive(sample, { seed, speed: SPEED, skipS });
  const enrolment = app.get(Enrolment);
  const em = app.get(DataSource).manager;
  const { yardId, name, lead } = night.yard;
  const wall = await enrolment.makeCode(em, yardId, 'wall');
  const hand = await enrolment.makeCode(em, yardId, 'hand');
  const digits = practicePin();
  if (lead.person) await enrolment.setPin(em, lead.person.id, digits);
  return [
    '',
    `A practice night runs in ${name}, ${SPEED} times as fast as a real one, with the fires and the sky of seed ${seed}.`,
    `Watch its wall:          ${here}/enrol#${wall.code}`,
    `Take a part in it:       ${here}/enrol#${hand.code}   as ${lead.person?.name}, PIN ${digits}`,
    'Each link works once, within ten minutes. Open each in a private window of its own, so that this browser stays what it is.',
  ].join('\n');
}
