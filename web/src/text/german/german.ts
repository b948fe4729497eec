import type { Sentences, Templates } from '../../../../src/sentence/catalogue.ts';

/** A catalogue of the program in German. A code that is missing, or is no code, is a type error. */
export interface GermanCatalogue {
  readonly of: Sentences;
  /** By code; values stand in the same braces, without their kind. */
  readonly said: Readonly<Record<string, string>>;
}

export function german<T extends Templates>(
  of: Sentences<T>,
  said: { readonly [C in keyof T]: string },
): GermanCatalogue {
  return { of, said };
}
