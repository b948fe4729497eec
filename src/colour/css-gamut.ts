/**
 * Into the colours a screen has, at constant hue: CSS Color Module Level 4, section 13.2 (binary search for the chroma
 * in OKLCH, with local clipping once it can no longer be seen). Matrices as in its section 17, "Sample code for Color
 * Conversions"; OKLab after B. Ottosson, "A perceptual color space for image processing", 2020, as CSS restates it.
 * The transfer function is that of sRGB, IEC 61966-2-1; Display P3 has the same.
 */
type Three = readonly [number, number, number];
type Matrix = readonly [Three, Three, Three];

/** XYZ (D65 of the display standards, Y of white is 1) to linear light of the screen. */
const LINEAR = {
  srgb: [
    [12831 / 3959, -329 / 214, -1974 / 3959],
    [-851781 / 878810, 1648619 / 878810, 36519 / 878810],
    [705 / 12673, -2585 / 12673, 705 / 667],
  ],
  p3: [
    [446124 / 178915, -333277 / 357830, -72051 / 178915],
    [-14852 / 17905, 63121 / 35810, 423 / 17905],
    [11844 / 330415, -50337 / 660830, 316169 / 330415],
  ],
} as const satisfies Record<string, Matrix>;
export type Gamut = keyof typeof LINEAR;

const XYZ_TO_LMS = [
  [0.819022437996703, 0.3619062600528904, -0.1288737815209879],
  [0.0329836539323885, 0.9292868615863434, 0.0361446663506424],
  [0.0481771893596242, 0.2642395317527308, 0.6335478284694309],
] as const satisfies Matrix;
const LMS_TO_XYZ = [
  [1.2268798758459243, -0.5578149944602171, 0.2813910456659647],
  [-0.0405757452148008, 1.112286803280317, -0.0717110580655164],
  [-0.0763729366746601, -0.4214933324022432, 1.5869240198367816],
] as const satisfies Matrix;
const LMS_TO_OKLAB = [
  [0.210454268309314, 0.7936177747023054, -0.0040720430116193],
  [1.9779985324311684, -2.4285922420485799, 0.450593709617411],
  [0.0259040424655478, 0.7827717124575296, -0.8086757549230774],
] as const satisfies Matrix;
const OKLAB_TO_LMS = [
  [1, 0.3963377773761749, 0.2158037573099136],
  [1, -0.1055613458156586, -0.0638541728258133],
  [1, -0.0894841775298119, -1.2914855480194092],
] as const satisfies Matrix;
/** What cannot be seen, in OKLab, and how near the search comes to it: both as the standard has them. */
const JND = 0.02;
const EPSILON = 1e-4;

function times(m: Matrix, [x, y, z]: Three): Three {
  const row = (r: Three): number => r[0] * x + r[1] * y + r[2] * z;
  return [row(m[0]), row(m[1]), row(m[2])];
}
const each = (v: Three, f: (x: number) => number): Three => [f(v[0]), f(v[1]), f(v[2])];

const encoded = (c: number): number => {
  const size = Math.abs(c);
  return size > 0.0031308 ? Math.sign(c) * (1.055 * size ** (1 / 2.4) - 0.055) : 12.92 * c;
};
const clipped = (c: number): number => Math.min(1, Math.max(0, c));
const inside = (rgb: Three): boolean => rgb.every((c) => c >= 0 && c <= 1);
const oklabOfXyz = (xyz: Three): Three => times(LMS_TO_OKLAB, each(times(XYZ_TO_LMS, xyz), Math.cbrt));
const xyzOfOklab = (lab: Three): Three =>
  times(
    LMS_TO_XYZ,
    each(times(OKLAB_TO_LMS, lab), (c) => c ** 3),
  );
const gap = (a: Three, b: Three): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Whether a screen of this gamut has the colour; `xyz` relative to D65, Y of white is 1. */
export function inGamut(xyz: Three, gamut: Gamut): boolean {
  return inside(times(LINEAR[gamut], xyz));
}

/** Encoded channels (0..1) of the colour, or of the nearest one of its hue and lightness where the screen lacks it. */
export function intoGamut(xyz: Three, gamut: Gamut): Three {
  const m = LINEAR[gamut];
  const own = times(m, xyz);
  if (inside(own)) return each(own, encoded);
  const [L, a, b] = oklabOfXyz(xyz);
  if (L >= 1) return [1, 1, 1];
  if (L <= 0) return [0, 0, 0];
  let low = 0;
  let high = 1;
  let found: Three = own;
  // `low` and `high` are shares of the colour's own chroma.
  const chroma = Math.hypot(a, b);
  while ((high - low) * chroma > EPSILON) {
    const share = (low + high) / 2;
    const tried: Three = [L, a * share, b * share];
    const rgb = times(m, xyzOfOklab(tried));
    found = each(rgb, clipped);
    if (inside(rgb) || gap(oklabOfXyz(linearToXyz(found, gamut)), tried) <= JND) low = share;
    else high = share;
  }
  return each(found, encoded);
}

/** Back from linear light by the inverse, made when first wanted: no second table to keep in step. */
function linearToXyz([r, g, b]: Three, gamut: Gamut): Three {
  const inverse = (INVERSE[gamut] ??= inverted(LINEAR[gamut]));
  return times(inverse, [r, g, b]);
}
const INVERSE: Partial<Record<Gamut, Matrix>> = {};

function inverted([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    each([e * i - f * h, c * h - b * i, b * f - c * e], (v) => v / det),
    each([f * g - d * i, a * i - c * g, c * d - a * f], (v) => v / det),
    each([d * h - e * g, b * g - a * h, a * e - b * d], (v) => v / det),
  ];
}
