import type { NestExpressApplication } from '@nestjs/platform-express';
import { HOUR_S } from '@stokehold/domain/quantity';
import { randomInt } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { DataSource } from 'typeorm';
import { Enrolment } from './identity/index.js';
import { PracticeNights, readSample } from './practice/index.js';

const SAMPLE = fileURLToPath(new URL('../../../infra/sample/brackwater.json', import.meta.url));
/** Ten minutes of the night pass in one: something happens on the wall every few seconds. */
const SPEED = 10;
/** The night opens when its fires burn. */
const SKIP_S = 2 * HOUR_S;

/** Opens a practice night on the sample yard; gives the lines that say how to look at it. */
export async function openPractice(app: NestExpressApplication, port: number): Promise<string> {
  const night = await app.get(PracticeNights).openLive(readSample(SAMPLE), { seed: randomInt(1, 1_000_000), speed: SPEED, skipS: SKIP_S });
  const enrolment = app.get(Enrolment);
  const em = app.get(DataSource).manager;
  const { code } = await enrolment.makeCode(em, night.yard.yardId, 'wall');
  return [
    `A practice night runs in ${night.yard.name}, ${SPEED} times as fast as a real one.`,
    `Watch its wall: http://localhost:${port}/enrol#${code} (the code ${code} works once, within ten minutes)`,
  ].join('\n');
}
