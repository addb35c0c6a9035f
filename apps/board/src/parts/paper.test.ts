import { describe, expect, it } from 'vitest';
import { pdfOf } from './paper-pdf.js';
import { written } from './paper.js';

const paper = (rows: number) => ({ title: 'Leña, 3:00', lines: ['Reparto'], tables: [{ title: 'Lotes', heads: ['lote', 'leños'], rows: Array.from({ length: rows }, (_, nth) => [`Roble ${nth}`, String(nth)]) }] });
const bytesOf = (rows: number, notes = ['Estimado.']) => new TextDecoder('latin1').decode(pdfOf({ ...paper(rows), notes }).output('arraybuffer'));

describe('a paper as PDF', () => {
  it('begins as ISO 32000 has it, ends with its mark, and carries its words as text', () => {
    const pdf = bytesOf(2);
    expect(pdf.startsWith('%PDF-1.')).toBe(true);
    expect(pdf.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(pdf).toContain('(Roble 1) Tj');
    expect(pdf).toContain('(Le\xf1a, 3:00) Tj');
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(1);
  });
  it('a long table goes on over pages, each with the heads', () => {
    const pdf = bytesOf(120, []);
    const pages = pdf.match(/\/Type \/Page\b(?!s)/g)!.length;
    expect(pages).toBeGreaterThan(1);
    expect(pdf.match(/\(lote\) Tj/g)).toHaveLength(pages);
    expect(pdf).toContain('(Roble 119) Tj');
  });
});

it('letters that the fonts of every reader lack lose their mark, or are told to be missing', () => {
  expect(written('Añejo, 12 € – “old”')).toBe('Añejo, 12 € – “old”');
  expect(written('Kovačić')).toBe('Kovacic');
  expect(written('2:14\u202fp. m.')).toBe('2:14 p. m.');
  expect(written('木 →')).toBe('? ?');
});
