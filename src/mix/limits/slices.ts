import { type Watch, heed } from '../problem.ts';
import { type EdgeSearch, valueLOf } from './edge-search.ts';
import { type OutermostMix, outermost } from './edges.ts';

/** One value slice of the reachable colours: the strongest chroma per hue. */
export interface ValueSlice {
  /** Munsell value. */
  readonly value: number;
  /** Degrees of CIELAB, ascending, and the chroma reached there; 0 where that hue is not reached. */
  readonly edge: readonly { readonly hue: number; readonly chroma: number }[];
  /** Area in CIELAB units squared, the slice seen as a star about the neutral. */
  readonly area: number;
}

/**
 * Value slices by solving along each hue at each value. `hues`: how many, evenly spaced. `outermostOf`, where given, is
 * filled with the strongest mix of each hue in all of them. @throws MixingStopped
 */
export function valueSlices(
  edge: EdgeSearch,
  values: readonly number[],
  hues: number,
  watch?: Watch,
  outermostOf: (OutermostMix | undefined)[] = [],
): ValueSlice[] {
  return values.map((value, i) => {
    let from: OutermostMix | undefined;
    const outline = Array.from({ length: hues }, (_, k) => {
      heed(watch, i * hues + k, values.length * hues);
      const hue = (360 * k) / hues;
      // The neighbour's mix is a good start; where that fails, the net's.
      const found =
        (from && outermost(edge, hue, valueLOf(value), from)) ?? outermost(edge, hue, valueLOf(value));
      from = found;
      if (found && found.chroma > (outermostOf[k]?.chroma ?? 0)) outermostOf[k] = found;
      return { hue, chroma: found?.chroma ?? 0 };
    });
    return { value, edge: outline, area: starArea(outline.map((o) => o.chroma)) };
  });
}

/** Area of a star with evenly spaced rays. */
function starArea(rays: readonly number[]): number {
  const turn = Math.sin((2 * Math.PI) / rays.length) / 2;
  return rays.reduce((sum, r, i) => sum + turn * r * rays[(i + 1) % rays.length]!, 0);
}

/** Volume of a stack of slices in CIELAB units cubed: areas over L* by trapezia, closed at the darkest and the lightest. */
export function slicesVolume(
  slices: readonly ValueSlice[],
  darkestValue: number,
  lightestValue: number,
): number {
  const points = [
    { L: valueLOf(darkestValue), area: 0 },
    ...slices.map((s) => ({ L: valueLOf(s.value), area: s.area })),
    { L: valueLOf(lightestValue), area: 0 },
  ];
  return points.reduce((sum, p, i) => {
    const next = points[i + 1];
    return next ? sum + ((p.area + next.area) / 2) * (next.L - p.L) : sum;
  }, 0);
}
