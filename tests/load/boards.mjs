// Boards that hang in the yards: each hears every change; the first of a yard also reads what changed.
import { performance } from 'node:perf_hooks';
import WebSocket from 'ws';

/** A board by the frames of Engine.IO 4 and Socket.IO 5; `read` takes what a change says. Opened anew half a second after its line broke. */
function board(base, who, read) {
  const heard = { seq: 0, changes: 0, gaps: 0, opened: 0, lastMs: 0 };
  let line;
  let closed = false;
  const open = () => {
    line = new WebSocket(`${base.replace('http', 'ws')}/live/?EIO=4&transport=websocket`, { headers: { ...who, origin: base }, perMessageDeflate: false });
    line.on('error', () => undefined);
    line.on('close', () => closed || setTimeout(open, 500));
    line.on('message', (data) => {
      const text = data.toString('utf8');
      if (text[0] === '0') {
        heard.seq = 0; // a board that comes back asks for all of the state anew
        line.send('40');
      } else if (text === '2') line.send('3');
      else if (text.startsWith('40')) heard.opened += 1;
      else if (text.startsWith('42["change"')) {
        const seq = Number(/"seq":(\d+)/.exec(text)[1]);
        if (heard.seq > 0 && seq > heard.seq + 1) heard.gaps += 1;
        heard.seq = Math.max(heard.seq, seq);
        heard.changes += 1;
        heard.lastMs = performance.now();
        read?.(JSON.parse(text.slice(2))[1]);
      }
    });
  };
  open();
  return { heard, close: () => ((closed = true), line.close()) };
}

/** All boards of a town. `onCheck(pitId)` is told when a check of this pit, with what came of it, stands on its yard's first board. */
export function openBoards(base, town, onCheck) {
  const boards = town.flatMap(({ boards: hung }) => {
    let recorded = false;
    const read = ({ event, changed }) => {
      recorded ||= event === 'check-recorded';
      if (!recorded || !changed.pits) return;
      recorded = false;
      for (const { pit } of changed.pits) onCheck(pit.id);
    };
    return hung.map((who, nth) => board(base, who, nth === 0 ? read : undefined));
  });
  return {
    all: boards,
    open: () => boards.filter(({ heard }) => heard.opened > 0).length,
    close: () => boards.forEach((one) => one.close()),
  };
}
