import type { AfterPitView } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayFoodWords } from '../../words/food.js';

function holdSaid(say: SayFoodWords, figures: Figures, { limitC, section, coreBelowAt, outsideBelowAt, endsC }: AfterPitView['hold']): readonly string[] {
  const limit = { temp: figures.of('food', limitC), section };
  const core = coreBelowAt ? say('after.coreBelow', { ...limit, time: figures.dayTime(coreBelowAt) }) : say('after.coreStays', { ...limit, ends: figures.of('temp', endsC) });
  return outsideBelowAt ? [core, say('after.outsideBelow', { temp: limit.temp, time: figures.dayTime(outsideBelowAt) })] : [core];
}

function coolSaid(say: SayFoodWords, figures: Figures, { fromAt, section, advice, byAt, thickestM }: AfterPitView['cool'], sliceM: number): readonly string[] {
  const values = { from: figures.dayTime(fromAt), section, slice: figures.of('length', sliceM), by: byAt ? figures.dayTime(byAt) : '' };
  const thickest = thickestM === null ? say('after.noneCools', values) : say('after.thickest', { ...values, thickest: figures.of('length', thickestM) });
  return advice === 'cools-whole' ? [say('after.cools-whole', values)] : [say(`after.${advice}`, values), thickest];
}

/** What becomes of a cook after the pit, line by line: a forecast against named sections, and no word of being fit to serve. */
export const afterSaid = (say: SayFoodWords, figures: Figures, { offAt, leavesC, peakC, peakAt, hold, cool }: AfterPitView, sliceM: number): readonly string[] => [
  say('after.peak', { off: figures.dayTime(offAt), leaves: figures.of('temp', leavesC), peak: figures.of('temp', peakC), time: figures.time(peakAt) }),
  ...holdSaid(say, figures, hold),
  ...coolSaid(say, figures, cool, sliceM),
];
