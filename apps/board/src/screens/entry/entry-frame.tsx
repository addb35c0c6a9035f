import type { Language } from '@stokehold/domain/contract';
import { useEffect, type ReactNode } from 'react';
import { Choice } from '../../parts/choice.js';
import { UnsentNotice } from '../../parts/unsent-notice.js';
import { useSharedWords } from '../../words/shared.js';
import { speak, useLanguage } from '../../words/words.js';
import css from './entry.module.css';

const LANGUAGES: readonly Language[] = ['en', 'es'];

/** The frame of every way in: the name of the yard, the language to speak, and one thing to do. */
export function EntryFrame({ title, above, children }: { readonly title: string; readonly above?: string | undefined; readonly children: ReactNode }) {
  const shared = useSharedWords();
  const language = useLanguage();
  useEffect(() => {
    document.title = `${title} · Stokehold`;
    document.documentElement.lang = language;
  }, [title, language]);
  return (
    <main className={css['entry']}>
      <div className={css['above']}>
        <span>{above ?? 'Stokehold'}</span>
        <Choice className={css['languages']} label={shared('language')} labelUnseen value={language} onChoose={speak}
          options={LANGUAGES.map((value) => ({ value, label: shared(`language.${value}`) }))} />
      </div>
      <UnsentNotice />
      <h1>{title}</h1>
      {children}
    </main>
  );
}
