import { appendFileSync } from 'node:fs';

/** Notes a figure for the table that the suite prints when it is done. */
export function measured(code: string, what: string): void {
  const file = process.env['FAULTS_MEASURED'];
  if (file) appendFileSync(file, `${JSON.stringify({ code, what })}\n`);
  else console.info(`${code}: ${what}`);
}
