// Prints every figure that the project is held to. Each bench stands alone too: node tests/bench/<name>.mjs
import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));
const asked = process.argv.slice(2);
const benches = readdirSync(folder).filter((file) => file.endsWith('.mjs') && file !== basename(fileURLToPath(import.meta.url))).sort();
for (const file of benches) {
  const name = file.replace('.mjs', '');
  if (asked.length > 0 && !asked.includes(name)) continue;
  console.log(`\n== ${name} ==`);
  const { run } = await import(new URL(file, import.meta.url));
  if (run) await run();
}
