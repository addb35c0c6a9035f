/** Words of the forms of all desk screens. */
export const desk = {
  timeMissing: 'Type a time such as 19:30, and a date where one is asked for.',
  onDay: 'on',
  timeSkipped: 'This time does not exist that night: from {{from}} the clocks go to {{to}}. Choose another.',
  timeTwice: 'The clocks go back: this time comes twice.',
  timeFirst: 'the first',
  timeSecond: 'the second',
  wholeNumber: 'Type a whole number.',
  tooLong: 'At most {{count}} letters.',
  sent: 'Recorded.',
  chooseOne: 'Choose one.',
  nobody: 'nobody',
  nothing: 'nothing',
  estimate: 'estimate',
  onlyLead: 'Only the shift lead and the manager see this.',
  onlyManagerSees: 'Only the manager sees this.',
  onlyManager: 'Only the manager may change the yard.',
} as const;
