import { describe, expect, it } from 'vitest';
import type { Tube } from '../../server/api/tubes.ts';
import { samePigment, turnOf } from '../../web/src/screens/rack/rack-list.ts';

type Stage = Tube['known']['stage'];
function tube(id: string, stage: Stage, more: Partial<Tube> = {}): Tube {
  return {
    id,
    paletteId: 'p',
    label: id,
    pigments: [],
    batch: '',
    bought: null,
    drying: 'unknown',
    role: null,
    density: null,
    note: '',
    practicePaintId: null,
    replaces: null,
    putAway: false,
    createdAt: '2026-01-01T00:00:00Z',
    cautions: [],
    ...more,
    known: {
      stage,
      ladderId: null,
      rungsDone: 0,
      rungsTotal: 4,
      fitId: null,
      trust: null,
      masstone: null,
      tint: null,
    },
  };
}
const white = (stage: Stage): Tube => tube('white', stage, { role: 'white' });

describe("whose turn it is, by the rack's next step", () => {
  it('asks for a white in an empty rack, and where every white is put away', () => {
    expect(turnOf([])).toEqual({ kind: 'white' });
    expect(turnOf([tube('blue', 'not measured')])).toEqual({ kind: 'white' });
    expect(turnOf([tube('white', 'constants', { role: 'white', putAway: true })])).toEqual({ kind: 'white' });
  });

  it('asks for a second tube beside a lonely white', () => {
    expect(turnOf([white('not measured')])).toEqual({ kind: 'tube' });
  });

  it('reads the white before any colour', () => {
    expect(turnOf([tube('blue', 'not measured'), white('not measured')])).toMatchObject({
      kind: 'measure',
      tube: { id: 'white' },
    });
  });

  it('goes on with a ladder begun before it begins another', () => {
    const rack = [white('ladder complete'), tube('red', 'not measured'), tube('blue', 'ladder begun')];
    expect(turnOf(rack)).toMatchObject({ kind: 'go on', tube: { id: 'blue' } });
  });

  it('fits as soon as white and one colour are read, then measures what is bare, then mixes', () => {
    const read = [white('ladder complete'), tube('blue', 'ladder complete'), tube('red', 'not measured')];
    expect(turnOf(read)).toMatchObject({ kind: 'fit', tube: { id: 'blue' } });
    const fitted = [white('constants'), tube('blue', 'constants'), tube('red', 'not measured')];
    expect(turnOf(fitted)).toMatchObject({ kind: 'measure', tube: { id: 'red' } });
    expect(turnOf([white('constants'), tube('blue', 'constants')])).toEqual({ kind: 'mix' });
  });
});

describe('two tubes of the same pigment', () => {
  it('are not found among tubes without codes, or put away', () => {
    expect(samePigment([tube('a', 'constants'), tube('b', 'constants')])).toEqual([]);
    const away = tube('b', 'constants', { pigments: ['PB29'], putAway: true });
    expect(samePigment([tube('a', 'constants', { pigments: ['PB29'] }), away])).toEqual([]);
  });

  it('stand together whatever the order and case of their codes', () => {
    const a = tube('a', 'constants', { pigments: ['PR101', 'PY42'] });
    const b = tube('b', 'not measured', { pigments: ['py42', 'PR101'] });
    expect(samePigment([a, tube('c', 'constants', { pigments: ['PR101'] }), b])).toEqual([
      { codes: 'PR101 PY42', tubes: [a, b] },
    ]);
  });
});
