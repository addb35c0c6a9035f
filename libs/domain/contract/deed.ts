/** Everything that a yard's record says was done, by a person or by the house; the name of each command is one. */
export const DEEDS = [
  'first-run', 'sign-in', 'sign-in-refused', 'sign-in-not-tried', 'sign-out', 'enrol-device',
  'make-device-code', 'revoke-device', 'end-session', 'save-yard', 'save-pit', 'save-crew-member',
  'save-pay-rules', 'save-climate', 'save-webhook', 'make-calendar-address', 'save-cut', 'save-food-limits',
  'plan-shift', 'pin-work', 'report-presence', 'report-break', 'add-task', 'finish-task',
  'sign-handover', 'record-check', 'record-food', 'record-readings', 'paste-readings', 'record-weather',
  'calibrate-probe', 'assign-source', 'set-learned-back', 'save-service', 'save-cook', 'place-cook',
  'take-off', 'price-cook', 'buy-lot', 'measure-lot', 'read-lot', 'move-wood',
  'recount-lot', 'trim-splits', 'burn-offcuts', 'recount-offcuts', 'make-pull', 'acknowledge-alarm',
  'shelve-alarm', 'unshelve-alarm', 'alarm-step', 'clock-step', 'correct-record', 'take-facts-in',
] as const;
export type DeedName = (typeof DEEDS)[number];
