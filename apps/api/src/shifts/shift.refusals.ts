import type { ShiftRefusal } from '@stokehold/domain/shift';
import { refused } from '../platform/index.js';

const SENTENCES: { readonly [C in ShiftRefusal['code']]: string } = {
  'shift-ends-before-it-begins': 'The shift ends before it begins. Give an end that lies after the start; a night ends on the next day.',
  'shift-too-long': 'A shift takes at most 24 hours. Make two shifts of it.',
  'shift-has-ended': 'This shift is over and is a record now. Plan a new one.',
  'shift-overlaps': 'Another shift of this yard runs at that time. Change its hours or the hours of this one.',
  'person-on-two-shifts': 'Somebody would be on two shifts at once. Change their hours, or take them off one of the shifts.',
  'hours-outside-shift': "Somebody's hours lie outside the shift. They may come three hours before it and stay three hours after it.",
  'break-outside-shift': "A break does not fit into somebody's hours. Its window begins within them and leaves time for the whole break.",
  'light-outside-shift': 'A pit would be lit after the shift. Give it a light-up time before the end.',
};

/** Says what is wrong with a shift, with whose hours or which pit it is about. */
export function shiftRefused({ code, ...about }: ShiftRefusal): never {
  return refused(code, SENTENCES[code], about);
}
