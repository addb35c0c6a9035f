import { describe, expect, it } from 'vitest';
import { brokenLine } from './foot-lines.js';

const tenEach = (text: string) => 10 * text.length;
const unmarked = (text: string) => ({ mark: '', text });

describe('a line at the foot of the wall', () => {
  it('stands whole where it fits', () => {
    expect(brokenLine({ mark: '▲ Heron: ', text: 'below the band' }, 230, tenEach)).toEqual(['▲ Heron: below the band']);
  });

  it('is broken between words into the fewest pieces that fit, about equally long', () => {
    expect(brokenLine(unmarked('look at the coals; one dry split and a little air'), 400, tenEach)).toEqual(['look at the coals; one dry', 'split and a little air']);
  });

  it('names its pit in each of its pieces', () => {
    expect(brokenLine({ mark: '▲ Heron: ', text: 'told Ana; the lead at 01:17' }, 250, tenEach)).toEqual(['▲ Heron: told Ana; the', '▲ Heron: lead at 01:17']);
  });

  it.each([100, 170, 260, 330])('loses no word and overruns nowhere in %i px', (room) => {
    const line = 'Mide el centro y haz lo que dice la hoja de comida. Deciden el reglamento y la gerencia.';
    const broken = brokenLine(unmarked(line), room, tenEach);
    expect(broken.join(' ')).toBe(line);
    expect(broken.filter((piece) => tenEach(piece) > room && piece.includes(' '))).toEqual([]);
  });

  it('a word wider than the room stands alone', () => {
    expect(brokenLine(unmarked('a carbonmonoxide b'), 50, tenEach)).toEqual(['a', 'carbonmonoxide', 'b']);
  });
});
