export type Theme = 'night' | 'day';
const KEPT = 'theme';

export const keptTheme = (): Theme => (localStorage.getItem(KEPT) === 'day' ? 'day' : 'night');

/** Night unless this device was told otherwise; remembered on the device. */
export function shine(theme: Theme): void {
  localStorage.setItem(KEPT, theme);
  document.documentElement.dataset['theme'] = theme;
}
