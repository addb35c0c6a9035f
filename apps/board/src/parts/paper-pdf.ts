import { jsPDF } from 'jspdf';
import { autoTable } from 'jspdf-autotable';
import { type Paper, written } from './paper.js';

const MARGIN_MM = 16;
const INK = 30;
const QUIET = 110;
const LINE_MM = 5.5;

/** The paper as a PDF on letter sheets: text that can be searched and copied, tables that go on over pages with their heads. */
export function pdfOf({ title, lines, tables, notes }: Paper): jsPDF {
  const pdf = new jsPDF({ unit: 'mm', format: 'letter' });
  pdf.setProperties({ title: written(title) });
  const widthMm = pdf.internal.pageSize.getWidth() - 2 * MARGIN_MM;
  let at = MARGIN_MM + 4;
  const write = (text: string, size: number, ink: number) => {
    pdf.setFontSize(size).setTextColor(ink);
    for (const line of pdf.splitTextToSize(written(text), widthMm) as string[]) {
      if (at > pdf.internal.pageSize.getHeight() - MARGIN_MM) {
        pdf.addPage();
        at = MARGIN_MM + 4;
      }
      pdf.text(line, MARGIN_MM, at);
      at += (LINE_MM * size) / 11;
    }
  };
  write(title, 18, INK);
  for (const line of lines) write(line, 11, INK);
  for (const { title: heading, heads, rows } of tables) {
    at += LINE_MM;
    write(heading, 13, INK);
    autoTable(pdf, {
      startY: at, margin: MARGIN_MM, theme: 'grid', styles: { fontSize: 10, textColor: INK, overflow: 'linebreak' }, headStyles: { fillColor: 230, textColor: INK },
      head: [heads.map(written)], body: rows.map((row) => row.map(written)),
    });
    at = (pdf as jsPDF & { lastAutoTable: { finalY: number } }).lastAutoTable.finalY + LINE_MM;
  }
  at += LINE_MM;
  for (const note of notes) write(note, 10, QUIET);
  return pdf;
}
