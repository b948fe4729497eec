/**
 * The check tile over the sessions. Three kinds of change are charted: the level (mean over channels), the balance
 * (long wavelengths against short), and each channel by itself. The channels' limits are wider, so that watching many
 * of them at once raises about as few false alarms as watching one (Bonferroni's inequality), and they are not
 * watched for jumps. With 36 channels and 30 sessions behind it a steady tile alarms in about one session of 13
 * (15 of 200 made ones; tests/calibrate/head-tests.test.ts counts some).
 *
 * Limits from a few sessions are themselves uncertain: at the chart's own 2.66 a steady made tile alarmed in about half
 * of the sessions with five behind them (36 channels). Until twenty stand behind, they are widened to what one more
 * value of the same kind may do: t sqrt(1 + 1/n), Student's t for a new observation, in place of the normal quantile,
 * with the degrees of freedom of a mean moving range, 0.62 (n - 1) (200 000 made series of 5 to 19 values: 0.65 to
 * 0.62).
 */
import { perCent } from '../per-cent.ts';
import {
  type ChartSignal,
  type ControlLimits,
  FIRM_POINTS,
  LEAST_POINTS,
  INDIVIDUALS_FACTOR,
  controlLimits,
  judgeValue,
} from './control-chart.ts';
import { normalQuantile } from './normal-quantile.ts';
import { say } from './sentences.ts';
import { studentQuantile } from './student-quantile.ts';

export interface TileChart {
  /** "level", "balance" or a channel's name. */
  readonly name: string;
  readonly values: readonly number[];
  /** From all sessions but the last. */
  readonly limits: ControlLimits;
  /** Where the last session lies. */
  readonly signal: ChartSignal;
}

export interface TileVerdict {
  readonly steady: boolean;
  readonly charts: readonly TileChart[];
  readonly sentence: string;
}

const FALSE_ALARMS = 0.0027;
const FREEDOM_PER_RANGE = 0.62;

/** 3 / d2, for one of `many` charts watched at once whose limits `points` values stand behind. */
function limitFactor(many: number, points: number): number {
  const above = FALSE_ALARMS / (2 * many);
  const widths =
    points >= FIRM_POINTS
      ? normalQuantile(1 - above)
      : studentQuantile(above, FREEDOM_PER_RANGE * (points - 1)) * Math.sqrt(1 + 1 / points);
  return (INDIVIDUALS_FACTOR * widths) / 3;
}

/**
 * Judges the last of the sessions (reflectance per channel, oldest first, one array a session) by those before it.
 * @throws ReadingRefused `too-few` with fewer than five sessions before the last
 */
export function judgeCheckTile(
  sessions: readonly ArrayLike<number>[],
  channels: readonly string[],
): TileVerdict {
  const mean = (s: ArrayLike<number>, from = 0, to = s.length): number => {
    let sum = 0;
    for (let i = from; i < to; i++) sum += s[i]!;
    return sum / (to - from);
  };
  const third = Math.max(1, Math.floor(channels.length / 3));
  const behind = sessions.length - 1;
  const chart = (name: string, of: (s: ArrayLike<number>) => number, many = 1): TileChart => {
    const values = sessions.map((s) => of(s));
    const limits = controlLimits(
      values.slice(0, -1),
      behind < LEAST_POINTS ? undefined : limitFactor(many, behind),
    );
    const [previous, value] = values.slice(-2) as [number, number];
    return { name, values, limits, signal: judgeValue(value, many === 1 ? previous : value, limits) };
  };
  const charts = [
    chart('level', mean),
    chart('balance', (s) => mean(s, s.length - third) - mean(s, 0, third)),
    ...channels.map((name, i) => chart(name, (s) => s[i]!, Math.max(2, channels.length))),
  ];
  const out = charts.filter((c) => c.signal !== 'inside');
  return { steady: out.length === 0, charts, sentence: sentenceFor(charts, out) };
}

function sentenceFor(charts: readonly TileChart[], out: readonly TileChart[]): string {
  const level = charts[0]!;
  const { points, firm } = level.limits;
  const soft = firm ? '' : say('few-sessions', { count: points });
  const first = out[0];
  if (!first) return say('as-before', { count: points, soft });
  const names = out.map((c) => c.name).join(', ');
  const last = first.values.at(-1)!;
  if (first.name === 'balance') {
    return firm ? say('outside', { names }) : say('outside-soft', { names, count: points });
  }
  return say('outside-by', { names, by: perCent(last / first.limits.mean - 1), soft });
}
