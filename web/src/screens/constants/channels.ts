/**
 * Wavelengths of channels that are named by them ("450 nm"); undefined where any is not (bands with names, X, Y, Z),
 * for then a reading has no place on a wavelength axis.
 */
export function channelWavelengths(names: readonly string[]): number[] | undefined {
  const nm = names.map((name) => Number(/^(\d+(?:\.\d+)?)(?:\s*nm)?$/.exec(name.trim())?.[1] ?? Number.NaN));
  return nm.length > 0 && nm.every((v) => v > 0) ? nm : undefined;
}
