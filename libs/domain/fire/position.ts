import type { Lie } from '../wood/index.js';
import type { FirePosition } from './pit.js';

/**
 * Where the fire burns for splits that lie this way: across keeps it by the door, lengthwise carries it towards the throat.
 * Source: common practice, no source.
 */
export const firePositionOf = (lie: Lie): FirePosition => (lie === 'across' ? 'door' : 'middle');
