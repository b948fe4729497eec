/**
 * A sentence that the program made, in the language of the page. The rooms and the server say English from their
 * catalogues (`sentences.ts`); German stands in `german/`, under the same codes, and is fetched only by those who
 * read it. A sentence that no catalogue knows is shown as it came.
 */
import { changeSettings, settings } from '../state/settings.ts';

type Translate = (sentence: string) => string | undefined;
let german: Translate | undefined;
let coming: Promise<void> | undefined;

/** Resolves when sentences can be said in the language in use. */
export function saidReady(): Promise<void> {
  if (settings().language !== 'de' || german) return Promise.resolve();
  coming ??= import('./german/translate.ts').then(
    ({ inGerman }) => {
      german = inGerman;
      // Draws again what was shown in English meanwhile.
      changeSettings({});
    },
    // Away for the moment: asked for again with the next sentence.
    () => void (coming = undefined),
  );
  return coming;
}

export function said(sentence: string): string {
  if (settings().language !== 'de' || sentence === '') return sentence;
  if (!german) void saidReady();
  return german?.(sentence) ?? sentence;
}
