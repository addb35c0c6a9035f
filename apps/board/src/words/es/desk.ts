import type { desk as en } from '../en/desk.js';
import type { WordsLike } from '../words.js';

export const desk: WordsLike<typeof en> = {
  timeMissing: 'Ponga una hora como 19:30, y la fecha donde se pide.',
  onDay: 'el día',
  timeSkipped: 'Esa hora no existe esa noche: a las {{from}} los relojes pasan a las {{to}}. Elija otra.',
  timeTwice: 'Los relojes se atrasan: esta hora pasa dos veces.',
  timeFirst: 'la primera',
  timeSecond: 'la segunda',
  wholeNumber: 'Ponga un número entero.',
  tooLong: 'A lo más {{count}} letras.',
  sent: 'Anotado.',
  chooseOne: 'Elija uno.',
  nobody: 'nadie',
  nothing: 'nada',
  estimate: 'estimado',
  onlyLead: 'Esto lo ven solo el jefe de turno y el gerente.',
  onlyManagerSees: 'Esto solo lo ve el gerente.',
  onlyManager: 'Solo el gerente puede cambiar el patio.',
};
