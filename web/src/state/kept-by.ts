/**
 * Keeps what was worked out for something that never changes (a fit, a profile), the latest one only, so that coming back
 * to a screen asks nothing twice. A failure is not kept.
 */
export function keptBy<K, T>(work: (key: K) => Promise<T>): (key: K) => Promise<T> {
  let latest: { readonly key: K; readonly value: Promise<T> } | undefined;
  return (key) => {
    if (latest?.key === key) return latest.value;
    const value = work(key);
    const kept = { key, value };
    latest = kept;
    value.catch(() => {
      if (latest === kept) latest = undefined;
    });
    return value;
  };
}
