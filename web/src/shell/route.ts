/** Where the page is, kept in the address after `#`: `#/ladder/abc?over=black`. Works wherever the pages are served. */
export interface Route {
  readonly screen: string;
  /** What follows the screen's name, decoded. */
  readonly args: readonly string[];
  readonly query: URLSearchParams;
}

export function parseRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?', 2);
  const [screen = '', ...args] = path.split('/').map((part) => {
    try {
      return decodeURIComponent(part);
    } catch {
      return part;
    }
  });
  return { screen: screen || 'rack', args: args.filter(Boolean), query: new URLSearchParams(query) };
}

/** The address of a screen: `linkTo('ladder', tubeId)`. */
export function linkTo(screen: string, ...args: readonly string[]): string {
  return `#/${[screen, ...args].map(encodeURIComponent).join('/')}`;
}

/** Goes there. */
export function goTo(screen: string, ...args: readonly string[]): void {
  location.hash = linkTo(screen, ...args);
}
