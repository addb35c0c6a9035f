import { parseArgs } from 'node:util';

export interface Arguments {
  /** Opens a practice night on the sample yard. */
  readonly practice: boolean;
}

/** What was typed after `npm start --`; throws with what can be typed. */
export function readArguments(given: readonly string[]): Arguments {
  try {
    const { values } = parseArgs({ args: [...given], options: { practice: { type: 'boolean', default: false } } });
    return { practice: values.practice };
  } catch (error) {
    throw new Error(`${(error as Error).message.split('. ')[0]}. What can be given: --practice.`, { cause: error });
  }
}
