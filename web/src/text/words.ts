/**
 * The text catalogue. Every visible word of the pages stands in web/src/text/<room>.ts, English and German together:
 *
 *   export const rackWords = words({ title: 'Rack' }, { title: 'Farbregal' });
 *   ... in a render(): const t = rackWords(); html`<h1>${t.title}</h1>`
 *
 * A key that German lacks, or has too many of, or a sentence that takes other arguments, is a type error.
 */
import { settings } from '../state/settings.ts';

type Text = string | readonly string[] | ((...args: never[]) => string) | { readonly [key: string]: Text };

/** The same keys and arguments, other words. */
type Other<T> = T extends string
  ? string
  : T extends readonly string[]
    ? { readonly [K in keyof T]: string }
    : T extends (...args: infer A) => string
      ? (...args: A) => string
      : { readonly [K in keyof T]: Other<T[K]> };

/** A catalogue of both languages; calling it gives the words of the language in use. */
export function words<const T extends { readonly [key: string]: Text }>(en: T, de: Other<T>): () => Other<T> {
  const both = { en: en as unknown as Other<T>, de };
  return () => both[settings().language];
}
