import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const board = new URL('../../apps/board/src/', import.meta.url).pathname;
const rooms = readdirSync(join(board, 'words/en')).map((file) => basename(file, '.ts'));

async function words(language: string, room: string): Promise<Record<string, string>> {
  const file = (await import(pathToFileURL(join(board, 'words', language, `${room}.ts`)).href)) as Record<string, Record<string, string>>;
  const [first, ...more] = Object.values(file);
  if (!first || more.length) throw new Error(`words/${language}/${room}.ts exports one object of words`);
  return first;
}
const valuesIn = (text: string) => [...text.matchAll(/\{\{(\w+)\}\}/g)].map((match) => match[1]).sort();

describe('words in both languages', () => {
  it('every room of words exists in both', () => {
    expect(rooms.length).toBeGreaterThan(3);
    expect(readdirSync(join(board, 'words/es')).map((file) => basename(file, '.ts'))).toEqual(rooms);
  });

  it.each(rooms)('%s: the same keys, no empty word, the same values in each', async (room) => {
    const en = await words('en', room);
    const es = await words('es', room);
    expect(Object.keys(es).sort()).toEqual(Object.keys(en).sort());
    for (const [key, text] of Object.entries(en)) {
      expect(text.trim(), key).not.toBe('');
      expect(es[key]?.trim(), key).not.toBe('');
      expect(valuesIn(es[key] ?? ''), key).toEqual(valuesIn(text));
    }
  });
});

/** Attributes whose value people read or hear. */
const SAID = new Set(['aria-label', 'aria-description', 'aria-roledescription', 'title', 'placeholder', 'alt', 'label', 'hint', 'unit']);
/** Names, signs and units that are the same in every language. */
const NOT_WORDS = /^[^\p{L}]*(?:(?:Stokehold|h|min|s)[^\p{L}]*)?$/u;

/** Text on a screen that comes from no word list: between tags, in a said attribute, or as a plain string in braces. */
function strayText(file: string, source: string): string[] {
  const stray: string[] = [];
  const note = (node: ts.Node, text: string) => {
    if (NOT_WORDS.test(text.trim())) return;
    stray.push(`${file}:${tree.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${text.trim()}`);
  };
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true, ts.ScriptKind.TSX);
  /** Plain strings that an expression between tags or in a said attribute may show, through ?:, && and ||. */
  const shown = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) note(node, node.text);
    else if (ts.isTemplateExpression(node)) [node.head, ...node.templateSpans.map((span) => span.literal)].forEach((part) => note(part, part.text));
    else if (ts.isConditionalExpression(node)) [node.whenTrue, node.whenFalse].forEach(shown);
    else if (ts.isBinaryExpression(node)) [node.left, node.right].forEach((side) => (isComparison(node) ? undefined : shown(side)));
    else if (ts.isParenthesizedExpression(node)) shown(node.expression);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) note(node, node.text);
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent)) shown(node.expression);
    if (ts.isJsxAttribute(node) && SAID.has(node.name.getText()) && node.initializer)
      shown(ts.isJsxExpression(node.initializer) && node.initializer.expression ? node.initializer.expression : node.initializer);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return stray;
}
const isComparison = (node: ts.BinaryExpression) => /^[!=<>]/.test(node.operatorToken.getText());

const screens = readdirSync(board, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.tsx'));

describe('text on screens', () => {
  it('the scan finds text between tags, in attributes and in braces, and lets figures and signs pass', () => {
    expect(strayText('a.tsx', '<p>Hello</p>')).toEqual(['a.tsx:1 Hello']);
    expect(strayText('a.tsx', '<p aria-label="Hello" className="x">{say("x")} · 12 {a && "there"}{b ? `${n} splits` : "–"}</p>')).toEqual(['a.tsx:1 Hello', 'a.tsx:1 there', 'a.tsx:1 splits']);
    expect(strayText('a.tsx', '<p title={name === "low" ? say("x") : undefined}>▲ {n} ×{m}</p>')).toEqual([]);
  });

  it('every text on every screen comes from the word list', () => {
    expect(screens.length).toBeGreaterThan(20);
    expect(screens.flatMap((file) => strayText(file, readFileSync(join(board, file), 'utf8')))).toEqual([]);
  });
});
