import type { Language } from '@stokehold/domain/contract';
import i18next, { type TFunction } from 'i18next';
import { useMemo } from 'react';
import { initReactI18next, useTranslation } from 'react-i18next';

/** One screen's words in one language. English sets the keys, every other language has the same. */
export type WordsLike<T> = { readonly [K in keyof T]: string };
type Stem<K> = K extends `${infer S}_one` | `${infer S}_other` ? S : K;
/** What may be said: a key, without the ending that i18next picks by number. */
export type WordKey<T> = Stem<Extract<keyof T, string>>;
export type Values = Readonly<Record<string, string | number>>;
/** Says a word in the language of the person who looks: `say('dueIn', { count: 3 })`. */
export type Say<T> = (key: WordKey<T>, values?: Values) => string;

const LANGUAGE_KEPT = 'language';

function firstLanguage(): Language {
  const kept = globalThis.localStorage?.getItem(LANGUAGE_KEPT);
  if (kept === 'en' || kept === 'es') return kept;
  return globalThis.navigator?.language?.startsWith('es') ? 'es' : 'en';
}

void i18next.use(initReactI18next).init({
  lng: firstLanguage(),
  fallbackLng: false,
  resources: {},
  keySeparator: false,
  nsSeparator: false,
  interpolation: { escapeValue: false },
  initAsync: false,
  showSupportNotice: false,
  react: { useSuspense: false },
});

const plain = <T>(t: TFunction): Say<T> => ((key: string, values?: Values) => t(key, values ?? {})) as Say<T>;

/** Takes a screen's words in and returns the hook that says them. Called once a screen, in words/<screen>.ts. */
export function wordsOf<const T extends Readonly<Record<string, string>>>(room: string, en: T, es: WordsLike<T>): () => Say<T> {
  i18next.addResourceBundle('en', room, en);
  i18next.addResourceBundle('es', room, es);
  return () => {
    const { t } = useTranslation(room);
    return useMemo(() => plain<T>(t), [t]);
  };
}

/** The same without React, for functions that make sentences and for their tests. */
export function sayIn<T extends Readonly<Record<string, string>>>(language: Language, room: string): Say<T> {
  return plain<T>(i18next.getFixedT(language, room));
}

export const languageNow = (): Language => (i18next.language === 'es' ? 'es' : 'en');

export function useLanguage(): Language {
  const { i18n } = useTranslation();
  return i18n.language === 'es' ? 'es' : 'en';
}

/** From now on everything is said in this language; the device remembers it until somebody signs in. */
export function speak(language: Language): void {
  globalThis.localStorage?.setItem(LANGUAGE_KEPT, language);
  if (globalThis.document) document.documentElement.lang = language;
  if (i18next.language !== language) void i18next.changeLanguage(language);
}
