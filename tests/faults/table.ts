import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { FAULTS } from './faults.js';

/** Prints, when the suite is done, each fault with what is asked and what was measured, or where else it is shown. */
export function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-measured-'));
  const file = join(folder, 'measured');
  process.env['FAULTS_MEASURED'] = file;
  return () => {
    const lines = existsSync(file) ? readFileSync(file, 'utf8').trimEnd().split('\n') : [];
    const figures = lines.map((line) => JSON.parse(line) as { readonly code: string; readonly what: string });
    const rows = FAULTS.map(({ code, fault, expected, shownBy, open }) => {
      const here = figures.filter((one) => one.code === code).map(({ what }) => what);
      const said = here.length > 0 ? here.join('; ') : shownBy.map(([of]) => of).join(', ');
      return `| ${code} | ${fault} | ${expected} | ${[said, open && `open: ${open}`].filter(Boolean).join('; ')} |`;
    });
    console.info(['', '| | fault | asked | measured, or shown by |', '|---|---|---|---|', ...rows, `load average ${loadavg().map((one) => one.toFixed(1)).join(' ')}`, ''].join('\n'));
    rmSync(folder, { recursive: true, force: true });
  };
}
