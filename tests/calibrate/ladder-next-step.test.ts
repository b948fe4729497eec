/** What a ladder asks for next, until it is done. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type LadderProgress,
  type RungProgress,
  ladderDone,
  nextStep,
} from '../../src/calibrate/ladder/next-step.ts';

describe('the next step', () => {
  const rung = (id: string, more: number, weighed = true, madeFrom: string[] = []): RungProgress => ({
    id,
    name: id,
    weighed,
    madeFrom,
    reads: [{ over: 'opaque', kept: 3 - more, verdict: { more, sentence: `read ${more} more` } }],
  });
  const state = (change: Partial<LadderProgress>): LadderProgress => ({
    rungs: [rung('masstone', 0), rung('1:1', 2)],
    byHead: true,
    connected: true,
    headReady: true,
    fitted: false,
    ...change,
  });

  it('weighs first, and a pile before what is let down from it', () => {
    const rungs = [rung('1:16', 3, false, ['1:4']), rung('1:4', 3, false)];
    expect(nextStep(state({ rungs }))).toMatchObject({ action: 'weigh', rungId: '1:4' });
  });

  it('then reads the rung that asks for more, once the head is there and set', () => {
    expect(nextStep(state({ connected: false })).action).toBe('connect');
    expect(nextStep(state({ headReady: 'Read the black trap.' }))).toMatchObject({
      action: 'calibrate',
      sentence: 'Read the black trap.',
    });
    expect(nextStep(state({ whiteDue: '10 readings since the white.' })).headline).toBe(
      'Read the white tile',
    );
    expect(nextStep(state({}))).toMatchObject({
      action: 'read',
      rungId: '1:1',
      left: 2,
      headline: 'Read the 1:1',
    });
    expect(nextStep(state({ byHead: false, connected: false })).action).toBe('read');
  });

  it('reads bare cards before the films over them', () => {
    expect(nextStep(state({ cards: { black: 0, white: 1 } }))).toMatchObject({
      action: 'card',
      over: 'white',
      left: 1,
    });
  });

  it('closes the last block with a white, fits, follows the advice, and is done', () => {
    const rungs = [rung('masstone', 0)];
    expect(nextStep(state({ rungs, whiteDue: 'Old white.' })).action).toBe('calibrate');
    expect(nextStep(state({ rungs })).action).toBe('fit');
    expect(nextStep(state({ rungs, fitted: true, advice: 'Read it once more.' })).action).toBe(
      'measure more',
    );
    expect(nextStep(state({ rungs, fitted: true }))).toMatchObject({ action: 'done' });
    expect(ladderDone([rung('a', 1), rung('b', 0)])).toEqual({ done: 5, of: 6 });
  });

  it('comes to an end: doing what it says, whatever the state, always leads to done', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.boolean()), { minLength: 1, maxLength: 6 }),
        fc.boolean(),
        (shape, connected) => {
          let now = state({
            connected,
            headReady: connected || 'Read the white.',
            rungs: shape.map(([more, weighed], i) => rung(`r${i}`, more, weighed, i ? [`r${i - 1}`] : [])),
          });
          for (let i = 0; i < 100; i++) {
            const step = nextStep(now);
            if (step.action === 'done') return;
            const change = (f: (r: RungProgress) => RungProgress) =>
              now.rungs.map((r) => (r.id === step.rungId ? f(r) : r));
            if (step.action === 'weigh') now = { ...now, rungs: change((r) => ({ ...r, weighed: true })) };
            else if (step.action === 'connect') now = { ...now, connected: true };
            else if (step.action === 'calibrate') now = { ...now, headReady: true };
            else if (step.action === 'fit') now = { ...now, fitted: true };
            else now = { ...now, rungs: change((r) => rung(r.id, r.reads[0]!.verdict.more - 1)) };
          }
          throw new Error('It never came to an end.');
        },
      ),
    );
  });
});
