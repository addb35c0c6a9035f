import { parseArgs } from 'node:util';

/** What was asked of a practice night. */
export interface PracticeAsked {
  /** Wall time 'HH:mm' of the night at which it opens; left out, it opens when its fires burn. */
  readonly at?: string;
  /** The same seed gives the same fires, sky and crew; left out, each night is another. */
  readonly seed?: number;
}

export interface Arguments {
  /** Opens a practice night on the sample yard. */
  readonly practice?: PracticeAsked;
}

const WHAT = 'What can be given: --practice, and with it --at 01:00 and --seed 7.';
const WALL = /^([01]\d|2[0-3]):[0-5]\d$/;
const SEED = /^\d{1,9}$/;

/** What was typed after `npm start --`; throws with what can be typed. Held to arguments.test.ts */
export function readArguments(given: readonly string[]): Arguments {
  const { practice, at, seed } = typed(given);
  if (!practice && (at !== undefined || seed !== undefined)) throw new Error(`--at and --seed are for a practice night: give --practice too. ${WHAT}`);
  if (at !== undefined && !WALL.test(at)) throw new Error(`--at takes a time of the night such as 01:00, and not '${at}'. ${WHAT}`);
  if (seed !== undefined && !SEED.test(seed)) throw new Error(`--seed takes a whole number of up to nine digits, and not '${seed}'. ${WHAT}`);
  if (!practice) return {};
  return { practice: { ...(at !== undefined && { at }), ...(seed !== undefined && { seed: Number(seed) }) } };
}

function typed(given: readonly string[]) {
  try {
    return parseArgs({ args: [...given], options: { practice: { type: 'boolean', default: false }, at: { type: 'string' }, seed: { type: 'string' } } }).values;
  } catch (error) {
    throw new Error(`${(error as Error).message.split(/[.\n]/)[0]}. ${WHAT}`, { cause: error });
  }
}
