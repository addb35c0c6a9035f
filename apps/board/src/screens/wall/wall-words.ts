import type { Figures } from '../../units/figures.js';
import type { SayWallWords } from '../../words/wall.js';
import type { CrewNote } from './crew-notes.js';
import type { What } from './stripe.js';

/** What hands must do at a fire, in two or three words; empty while all is well. */
export function whatWords(what: What, say: SayWallWords, figures: Pick<Figures, 'time'>): string {
  switch (what.say) {
    case 'nothing':
      return '';
    case 'action': {
      const action = say(`action.${what.action}`);
      return what.late ? say('what.lateAnd', { action }) : action;
    }
    case 'look':
      return what.late ? say('what.lateAnd', { action: say('what.look') }) : say('what.look');
    case 'lights':
    case 'comes-off':
      return say(`what.${what.say}`, { time: figures.time(what.at) });
    default:
      return say(`what.${what.say}`);
  }
}

/** One line of the crew: who is missing, on break, or breaks next. */
export function crewWords(note: CrewNote, who: string, say: SayWallWords, figures: Pick<Figures, 'time'>): string {
  switch (note.say) {
    case 'late':
      return note.until ? say('lateTill', { who, time: figures.time(note.until) }) : say('late', { who });
    case 'away':
      return note.until ? say('awayTill', { who, time: figures.time(note.until) }) : say('away', { who });
    case 'on-break':
      return say('onBreak', { who });
    case 'break-at':
      return say('breakAt', { who, time: figures.time(note.at) });
  }
}
