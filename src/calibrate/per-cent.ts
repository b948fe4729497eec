/** A share as people read it: 0.0062 is "0.62 %". Two significant digits. */
export function perCent(share: number): string {
  const p = Math.abs(share * 100);
  if (!Number.isFinite(p)) return 'an unmeasurable share';
  return `${p === 0 ? '0' : p >= 9.95 ? p.toFixed(0) : p >= 0.95 ? p.toFixed(1) : p.toFixed(2)} %`;
}
