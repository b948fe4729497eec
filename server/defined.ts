/** Members that are not undefined. */
export type Defined<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

/** An object without the members that are undefined: what a caller left out is left as it was. */
export function defined<T extends object>(given: T): Defined<T> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Defined<T>;
}
