import type { AirSetView } from '@stokehold/domain/contract';
import type { SayFireWords } from '../words/fire.js';

/** How the air of a fire stands, in a few words: 'door two fingers, damper wide open'. */
export const airSaid = ({ door, damper, screen }: AirSetView, say: SayFireWords): string =>
  say(screen ? 'airSaidScreened' : 'airSaid', { door: say(`door.${door}`), damper: say(`damper.${damper}`) });
