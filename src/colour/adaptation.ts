/**
 * Chromatic adaptation by the linearised Bradford transform, as in ISO 15076-1:2010 (ICC.1:2010) annex E.
 * Used only to show colours: what is compared is compared under one white.
 */
import type { WhiteName } from './illuminant.ts';
import { type Lab, labOf, xyzFromLab } from './lab.ts';
import type { Xyz } from './xyz.ts';
import { whitePoint } from './white-point.ts';

const M = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
] as const;
const M_INV = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
] as const;

type Three = readonly [number, number, number];

function times(m: readonly Three[], v: Three): [number, number, number] {
  return [0, 1, 2].map((i) => m[i]![0] * v[0] + m[i]![1] * v[1] + m[i]![2] * v[2]) as [
    number,
    number,
    number,
  ];
}

/** The corresponding colour under another white. */
export function adaptXyz<W extends WhiteName>(xyz: Xyz, to: W): Xyz<W> {
  const from = whitePoint(xyz.white);
  const dest = whitePoint(to);
  const source = times(M, [from.X, from.Y, from.Z]);
  const target = times(M, [dest.X, dest.Y, dest.Z]);
  const cone = times(M, [xyz.X, xyz.Y, xyz.Z]);
  const [X, Y, Z] = times(M_INV, [
    (cone[0] * target[0]) / source[0],
    (cone[1] * target[1]) / source[1],
    (cone[2] * target[2]) / source[2],
  ]);
  return { X, Y, Z, white: to };
}

/** Lab under another white, by adaptation. */
export function adaptLab<W extends WhiteName>(lab: Lab, to: W): Lab<W> {
  return labOf(adaptXyz(xyzFromLab(lab), to));
}
