// nginx as infra/nginx/stokehold.conf sets it up, but for its ports and its certificate, in front of processes on this machine.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

const SHIPPED = fileURLToPath(new URL('../../infra/nginx/stokehold.conf', import.meta.url));

/** What is shipped, speaking plainly on one port, with these processes behind it. */
function confFor(listen, ports) {
  const servers = ports.map((port) => `  server 127.0.0.1:${port} max_fails=1 fail_timeout=2s;`).join('\n');
  const plain = readFileSync(SHIPPED, 'utf8')
    .replace(/(?: {2}server 127\.0\.0\.1:\d+ [^\n]*\n)+/, `${servers}\n`)
    .replace(/server \{\n {2}listen 80;[^}]*\}\n/, '')
    .replace('listen 443 ssl;', `listen 127.0.0.1:${listen};`)
    .replace(/ {2}ssl_certificate[^\n]*\n/g, '');
  if (/ssl|listen 80;/.test(plain) || !plain.includes(servers)) throw new Error('infra/nginx/stokehold.conf has another form than this expects');
  return plain;
}

/** The main file around a conf.d file, in a folder of its own. */
export function writeConf(folder, inner) {
  mkdirSync(join(folder, 'temp'), { recursive: true });
  writeFileSync(join(folder, 'stokehold.conf'), inner);
  const temp = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((one) => `${one}_temp_path ${folder}/temp/${one};`).join(' ');
  writeFileSync(join(folder, 'nginx.conf'), `daemon off; master_process off; pid ${folder}/pid; error_log stderr warn;\nevents { worker_connections 4096; }\nhttp { ${temp} include ${folder}/stokehold.conf; }\n`);
  return join(folder, 'nginx.conf');
}

/** Starts it; gives how to end it. */
export async function openNginx(folder, { listen, ports }) {
  const file = writeConf(folder, confFor(listen, ports));
  const nginx = spawn('nginx', ['-c', file, '-e', 'stderr'], { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  nginx.stderr.on('data', (chunk) => (said += chunk));
  const failed = new Promise((_, reject) => nginx.once('error', () => reject(new Error('nginx is not there: install it (Debian: apt-get install nginx)'))));
  const ended = new Promise((resolve) => nginx.once('exit', resolve));
  const answers = async () => {
    for (let tries = 0; tries < 100; tries++, await pause(50)) {
      if (nginx.exitCode !== null) throw new Error(`nginx ended: ${said}`);
      if (await fetch(`http://127.0.0.1:${listen}/api/health`).then(() => true, () => false)) return;
    }
    throw new Error(`nginx does not answer: ${said}`);
  };
  await Promise.race([answers(), failed]);
  return {
    close: async () => {
      nginx.kill('SIGTERM');
      await ended;
    },
  };
}
