import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const words = fileURLToPath(new URL('../../apps/board/src/words/', import.meta.url));

/** The rules of WCAG 2.2, levels A and AA, as axe-core knows them. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe-core finds against WCAG 2.2 AA on the page as it stands: rule, place, and what is wrong there. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async (rules) => {
    const { axe } = globalThis as unknown as { axe: { run(where: object, options: object): Promise<{ violations: { id: string; nodes: { target: string[]; failureSummary?: string }[] }[] }> } };
    const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: rules }, resultTypes: ['violations'] });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary?.replaceAll(/\s+/g, ' ')}`));
  }, RULES);
}

/** Words of three letters and more; shorter ones are units, initials and parts of figures, and a digest is none. */
const wordsIn = (text: string) => [...text.replaceAll(/\b[0-9a-f]{32,}\b/g, ' ').matchAll(/\p{L}{3,}/gu)].map(([word]) => word.toLowerCase());

/** Every word of one language's list, and what the browser itself writes in that language: days and months. */
export async function vocabulary(language: 'en' | 'es'): Promise<Set<string>> {
  const known = new Set<string>();
  for (const file of readdirSync(join(words, language))) {
    const list = (await import(pathToFileURL(join(words, language, file)).href)) as Record<string, Record<string, string>>;
    for (const texts of Object.values(list)) for (const text of Object.values(texts)) wordsIn(text.replaceAll(/\{\{\w+\}\}/g, ' ')).forEach((word) => known.add(word));
  }
  for (let month = 0; month < 12; month++) {
    for (const day of [1, 2, 3, 4, 5, 6, 7]) {
      const date = new Date(Date.UTC(2027, month, day));
      for (const width of ['short', 'long'] as const)
        wordsIn(new Intl.DateTimeFormat(`${language}-US`, { weekday: width, month: width }).format(date)).forEach((word) => known.add(word));
    }
  }
  return known;
}

/** Units and names that every language writes alike. */
const SAME_EVERYWHERE = ['stokehold', 'mph', 'min', 'español', 'english', 'btu', 'kbtu'];

/** Words that people see or hear on the page and that stand neither in the language's list nor among the yard's own names. */
export async function strayWords(page: Page, known: ReadonlySet<string>, names: readonly string[]): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const said: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent && !parent.closest('script, style, datalist, [list], option')) said.push(node.textContent ?? '');
    }
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]'))
      for (const name of ['aria-label', 'title', 'placeholder', 'alt']) said.push(element.getAttribute(name) ?? '');
    return [...said, document.title];
  });
  const own = new Set([...SAME_EVERYWHERE, ...names.flatMap(wordsIn)]);
  return [...new Set(texts.flatMap((text) => wordsIn(text).filter((word) => !known.has(word) && !own.has(word)).map((word) => `${word} in “${text.trim().slice(0, 80)}”`)))];
}
