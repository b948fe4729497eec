const keyOf = (screen: string): string => `tintladder.again.${screen}`;

/**
 * A page left open while the bench was built anew asks for files that are gone: loading it again brings the new ones.
 * Once for each screen, so that a fault in the files themselves is said and not gone round in circles with.
 */
export function loadAgainOnce(screen: string): boolean {
  const key = keyOf(screen);
  try {
    if (sessionStorage.getItem(key)) return false;
    sessionStorage.setItem(key, 'yes');
  } catch {
    return false;
  }
  location.reload();
  return true;
}

/** The screen stands: should it fail another day, it may be loaded again once more. */
export function loadedWell(screen: string): void {
  try {
    sessionStorage.removeItem(keyOf(screen));
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
}
