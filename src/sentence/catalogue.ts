/**
 * Where a sentence for a person is made. A room keeps its sentences in one catalogue, code to English, and says them
 * by code; the sentence itself stays plain text, because it is kept in profiles, stores and logs and sent by message.
 * `recognise` finds the code and its values again, so that a page can say the same in another language.
 *
 * A value stands in braces, with its kind after a colon where it is more than a name:
 *   {tube}          kept as it is: a name, a label, something out of a file
 *   {by:figure}     a number as written, with its unit; a language may write the decimal sign its own way
 *   {way:word}      one of `WORDS`
 *   {why:said}      another sentence or phrase of a catalogue
 *   {parts:list}    several of them, joined
 */
import type { Word } from './words.ts';

export type Templates = Readonly<Record<string, string>>;

type Slot<S extends string> = S extends `${string}{${infer V}}${infer Rest}` ? V | Slot<Rest> : never;
type NameOf<V extends string> = V extends `${infer N}:${string}` ? N : V;
type ValueOf<V extends string> = V extends `${string}:word` ? Word : string | number;

/** The values a sentence takes, by name. */
export type Values<S extends string> = { readonly [V in Slot<S> as NameOf<V>]: ValueOf<V> };

/** What a catalogue holds. */
export interface Sentences<T extends Templates = Templates> {
  /** The room or part of it; the first half of every code: `reading.white-fell`. */
  readonly name: string;
  readonly templates: T;
}

/** Says one of the sentences by its code. */
export type Say<T extends Templates> = <C extends keyof T & string>(code: C, ...values: Args<T[C]>) => string;

/** Values are asked for only where the sentence has any. */
type Args<S extends string> = [Slot<S>] extends [never] ? [] : [values: Values<S>];

export interface Catalogue<T extends Templates = Templates> extends Sentences<T> {
  /** The English sentence. */
  readonly say: Say<T>;
}

/** `{name}` or `{name:kind}`. */
export const SLOT = /\{([A-Za-z0-9]+)(?::(figure|word|said|list))?\}/g;

export function catalogue<const T extends Templates>(name: string, templates: T): Catalogue<T> {
  return {
    name,
    templates,
    say: (code, ...[values]) =>
      fill(templates[code]!, (values ?? {}) as Readonly<Record<string, string | number>>),
  };
}

/** Puts values in their places. A place without a value stays, to be seen. */
export function fill(template: string, values: Readonly<Record<string, string | number>>): string {
  return template.replaceAll(SLOT, (place, name: string) => String(values[name] ?? place));
}
