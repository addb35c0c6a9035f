import type { Page } from 'playwright-core';

/** One text as it is drawn on the wall. */
export interface DrawnText {
  readonly text: string;
  /** What it is: its class of text by board-and-reliability rules, see `LEAST_MM`. */
  readonly kind: 'large' | 'middle' | 'small';
  readonly level: string;
  readonly capitalPx: number;
  readonly color: string;
  /** What lies under it; both colours of a hatched ground. */
  readonly grounds: readonly string[];
  readonly cut: boolean;
}

/** WCAG 2.2, 1.4.3: (L1 + 0.05) / (L2 + 0.05) of linearised sRGB; from memory, its printed check values are in the test. */
export function contrastOf(one: string, other: string): number {
  const luminance = (color: string) => {
    const [r = 0, g = 0, b = 0] = (color.match(/[\d.]+/g) ?? []).map((part) => {
      const share = Number(part) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}

/** Reads every text on the wall from the rendered page: its computed size and colour, and what colour lies under it. */
function readPage(capitalFrac: number): DrawnText[] {
  const seen = (element: Element) => element.getBoundingClientRect().width > 1 && getComputedStyle(element).visibility !== 'hidden' && !element.closest('.unseen') && !element.closest('[aria-hidden="true"]')?.querySelector('header');
  /** The colours under an element; of a ground in two halves the one under its middle, of a hatched ground both. */
  const groundsUnder = (element: Element): string[] => {
    const middle = element.getBoundingClientRect().left + element.getBoundingClientRect().width / 2;
    for (let at: Element | null = element; at; at = at.parentElement) {
      const { backgroundColor, backgroundImage } = getComputedStyle(at);
      const colors = backgroundImage.match(/rgba?\([^)]+\)/g) ?? [];
      const halves = /^linear-gradient\(to right, .*?\) ([\d.]+)px/.exec(backgroundImage);
      if (halves) return [middle < at.getBoundingClientRect().left + Number(halves[1]) ? colors[0]! : colors[1]!];
      if (colors.length > 0) return colors;
      if (!/, 0\)$|transparent/.test(backgroundColor)) return [backgroundColor];
    }
    return ['rgb(255, 255, 255)'];
  };
  const kindOf = (element: Element, level: string): DrawnText['kind'] => {
    const row = element.closest('[data-row]');
    if (row?.querySelector('h2')?.contains(element)) return level === 'now' || level === 'grave' ? 'large' : 'middle';
    const part = row && [...row.children].findIndex((child) => child.contains(element));
    if (part === 0) return 'large';
    if (part === 2) return 'middle';
    return element.closest('header')?.firstElementChild === element ? 'middle' : 'small';
  };
  const texts: DrawnText[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!element || !node.textContent?.trim() || element.closest('script, style, title') || !seen(element)) continue;
    const style = getComputedStyle(element);
    const level = element.closest<HTMLElement>('[data-level]')?.dataset['level'] ?? (element.closest('[role="alert"]') ? 'cut off' : 'frame');
    const box = element.getBoundingClientRect();
    texts.push({
      text: node.textContent.trim(), kind: kindOf(element, level), level, capitalPx: parseFloat(style.fontSize) * capitalFrac, color: style.color, grounds: groundsUnder(element),
      cut: element.scrollWidth > element.clientWidth + 1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1 || box.left < -1 || box.top < -1,
    });
  }
  return texts;
}

/** Capital height over font size of the board's typeface, from its font file (table OS/2). */
const CAPITAL_FRAC = 0.7;

/** Every text on the wall as it is rendered now; what stands greyed behind the word of a lost server is left out. */
export const wallTexts = (page: Page): Promise<DrawnText[]> => page.evaluate(readPage, CAPITAL_FRAC);

/** Contrast of a text with what lies under it, as this eye sees both. */
export const textContrast = ({ color, grounds }: Pick<DrawnText, 'color' | 'grounds'>, sight?: Sight): number => {
  const seen = (one: string) => (sight ? seenBy(sight, one) : one);
  return Math.min(...grounds.map((ground) => contrastOf(seen(color), seen(ground))));
};

/** How an eye that lacks one kind of cone sees a colour: Machado, Oliveira, Fernandes 2009, severity 1.0, as matrices on linear sRGB; values from memory. Grey: luminance alone. */
const SIGHTS = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
  grey: [0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722],
} as const;
export type Sight = keyof typeof SIGHTS;

/** The colour as that eye sees it. */
export function seenBy(sight: Sight, color: string): string {
  const linear = (color.match(/[\d.]+/g) ?? []).slice(0, 3).map((part) => {
    const share = Number(part) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const rows = SIGHTS[sight];
  const back = [0, 3, 6].map((from) => {
    const sum = Math.min(1, Math.max(0, linear.reduce((total, share, nth) => total + share * rows[from + nth]!, 0)));
    return Math.round(255 * (sum <= 0.0031308 ? 12.92 * sum : 1.055 * sum ** (1 / 2.4) - 0.055));
  });
  return `rgb(${back.join(', ')})`;
}
