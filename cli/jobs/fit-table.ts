import { table } from '../output.ts';
import type { FitReport, TubeReport } from './fit-report.ts';

const SOURCES = {
  own: 'its own curves',
  shared: 'white, surface',
  others: 'other tubes',
  equations: 'equations',
} as const;

/** What `fit` prints: how far each tube can be trusted, what it does as a film, and what to mend. */
export function fitTable(report: FitReport): string {
  const { tubes, status, message, iterations, warnings, frame } = report;
  const said = new Set([...warnings, ...tubes.flatMap((t) => t.warnings.map((w) => `${t.id}: ${w}`))]);
  // A sentence that names its swatch needs no tube before it.
  for (const w of warnings) for (const t of tubes) said.delete(`${t.id}: ${w}`);
  return [
    evidenceTable(tubes),
    '',
    filmTable(tubes),
    '',
    ...(frame ? [frame] : []),
    `${status === 'converged' ? 'Converged' : 'Stopped'} after ${iterations} steps: ${message}`,
    ...[...said].map((sentence) => `Warning: ${sentence}`),
    ...tubes.flatMap((t) => t.drying.map((d) => `Drying: ${d.words}`)),
    ...nextLines(tubes),
  ].join('\n');
}

function evidenceTable(tubes: readonly TubeReport[]): string {
  const number = (v: number | null): string => (v === null ? '-' : v.toFixed(2));
  return table(
    ['tube', 'rungs', 'residual', 'left out', 'checks', 'MCDM', 'weighing', 'doubt', 'mostly from', 'trust'],
    tubes.map((t) => [
      t.id,
      String(t.rungs),
      number(t.residual),
      number(t.leftOut),
      number(t.checks?.mean ?? null),
      number(t.mcdm),
      `${t.weighingErrorPercent.toFixed(1)} %`,
      t.doubt.radius.toFixed(2),
      SOURCES[t.doubt.dominant],
      t.trust,
    ]),
  );
}

function filmTable(tubes: readonly TubeReport[]): string {
  const inUm = tubes.some((t) => t.film.fullHiding.micrometres !== null);
  const { X, micrometres } = tubes[0]!.film.contrast;
  const at = micrometres === null ? `${figure(X)} x` : `${figure(micrometres)} um`;
  const strength = tubes.some((t) => t.strengthPercent !== undefined);
  const rows = tubes.map(({ id, film, halfStrength, strengthPercent }) => {
    const { contrast, fullHiding, scattering, undertone } = film;
    const hides = fullHiding.micrometres ?? {
      value: fullHiding.X,
      low: fullHiding.low,
      high: fullHiding.high,
    };
    const whole = (v: number): string => String(Math.round(v) + 0);
    const { lab } = undertone;
    return [
      id,
      `${contrast.value.toFixed(2)} (${contrast.low.toFixed(2)}..${contrast.high.toFixed(2)})`,
      contrast.scope.Y.toFixed(0),
      contrast.scope.iso6504 ? 'ISO, ASTM' : contrast.scope.astmD2805 ? 'ASTM' : 'neither',
      `${ranged(hides)}${inUm ? ' um' : ' x'}`,
      ...(inUm ? [scattering ? ranged(at550(scattering)) : '-'] : []),
      `${whole(lab.L)} ${whole(lab.a)} ${whole(lab.b)} (${undertone.radius.toFixed(1)})`,
      halfStrength ? `1:${ranged({ ...halfStrength, value: halfStrength.parts })}` : '-',
      ...(strength ? [strengthPercent ? `${ranged(strengthPercent)} %` : '-'] : []),
    ];
  });
  return table(
    [
      'film',
      `contrast at ${at}`,
      'Y',
      'standards',
      'hides 0.98 at',
      ...(inUm ? ['S 550 nm, 1/um'] : []),
      'undertone L* a* b*',
      'half strength',
      ...(strength ? ['strength'] : []),
    ],
    rows,
  );
}

interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

function at550({
  wavelengths,
  value,
  low,
  high,
}: {
  readonly wavelengths: readonly number[];
  readonly value: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}): Ranged {
  const i = wavelengths.indexOf(550);
  return { value: value[i]!, low: low[i]!, high: high[i]! };
}

/** "3.3 (2.3..4.9)" */
function ranged({ value, low, high }: Ranged): string {
  return `${figure(value)} (${figure(low)}..${figure(high)})`;
}

/** Two places that count, without an exponent. */
function figure(v: number): string {
  return Number(v.toPrecision(2)).toLocaleString('en-GB', { useGrouping: false, maximumFractionDigits: 6 });
}

/** The measurements that buy most over all tubes; the whole list is in the JSON. */
function nextLines(tubes: readonly TubeReport[]): string[] {
  const most = tubes
    .flatMap((t) => t.next?.slice(0, 1) ?? [])
    .toSorted((a, b) => b.gain - a.gain)
    .slice(0, 3);
  return most.length > 0 ? ['', 'To measure next:', ...most.map((n) => `  ${n.sentence}`)] : [];
}
