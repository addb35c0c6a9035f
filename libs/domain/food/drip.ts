import type { Cut } from './cut.js';

/** How much a raw cut's drip asks of what lies below: rises with the heat that its own food code row demands. */
const rank = (cut: Pick<Cut, 'meat' | 'state'>) => (cut.meat === 'poultry' ? 2 : cut.state === 'intact' ? 0 : 1);

/**
 * Whether one cut may lie where it drips on another: only on what is cooked as far or further. Raw poultry over poultry alone; ground or
 * injected meat over no whole muscle. In the order of minimum cooking temperatures, [FDA-FC22] 3-302.11 and 3-401.11; the order
 * on one grate from memory.
 */
export const mayDripOn = (upper: Pick<Cut, 'meat' | 'state'>, lower: Pick<Cut, 'meat' | 'state'>): boolean => rank(upper) <= rank(lower);
