// For working on the house: the API is compiled and started again on every change, the board is served by Vite on port 5173.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const bin = (name) => join(root, 'node_modules', '.bin', name);
const children = [];
const start = (command, given, folder = root) => children.push(spawn(command, given, { cwd: folder, stdio: 'inherit' }));

const first = spawn(bin('tsc'), ['-b'], { cwd: root, stdio: 'inherit' });
first.once('exit', () => {
  start(bin('tsc'), ['-b', '--watch', '--preserveWatchOutput']);
  start(process.execPath, ['--watch', '--watch-preserve-output', 'apps/api/dist/main.js', ...process.argv.slice(2)]);
  start(bin('vite'), [], join(root, 'apps/board'));
  for (const child of children) child.once('exit', end);
});

let ending = false;
function end() {
  if (ending) return;
  ending = true;
  for (const child of children) child.kill('SIGTERM');
}
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, end);
