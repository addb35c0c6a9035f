import type { FirePage } from '@stokehold/domain/contract';
import { FACTORS } from './learned-words.js';

type Point = readonly [x: number, y: number];

export interface CourseShape {
  /** Where as set up lies. */
  readonly sameY: number;
  /** One line a factor, in the pieces between set backs, each with how far it may be off. */
  readonly lines: readonly { readonly name: (typeof FACTORS)[number]; readonly pieces: readonly (readonly Point[])[]; readonly last: Point | undefined }[];
  readonly setBacks: readonly number[];
}

/** From as set up to the edge of the drawing: 40 % more or less. */
const REACH_LOG = Math.log(1.4);
const EDGE_PX = 3;

/**
 * What was learned over the nights, check after check: nights stand side by side however many days lie between, since
 * nothing is learned while a pit is cold.
 */
export function courseShape({ course, setBacks }: FirePage['learned'], width: number, height: number): CourseShape {
  const step = course.length > 1 ? width / (course.length - 1) : 0;
  const y = (log: number) => Math.min(height - EDGE_PX, Math.max(EDGE_PX, height / 2 - (log / REACH_LOG) * (height / 2)));
  const breaks = setBacks.map(({ at }) => course.findIndex((point) => point.at > at)).map((nth) => (nth < 0 ? course.length : nth));
  const bounds = [0, ...breaks, course.length].sort((a, b) => a - b);
  const placed = (name: (typeof FACTORS)[number]) => course.map((point, nth): Point => [nth * step, y(point[name].log)]);
  return {
    sameY: height / 2,
    lines: FACTORS.map((name) => {
      const points = placed(name);
      return { name, pieces: bounds.slice(1).map((end, nth) => points.slice(bounds[nth], end)).filter(({ length }) => length > 0), last: points.at(-1) };
    }),
    setBacks: breaks.map((nth) => Math.min(width, Math.max(0, (nth - 0.5) * step))),
  };
}
