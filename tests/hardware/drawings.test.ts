/** The head's drawings: what the builder needs of the geometry, and that the sheets are those of the script. */
import { readFileSync } from 'node:fs';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { DRAWINGS } from '../../hardware-notes/drawings/drawings.ts';
import {
  HEAD,
  OUTER_FACE,
  lampAngles,
  litByOneLamp,
  onLampAxis,
  seenAt,
} from '../../hardware-notes/drawings/head-geometry.ts';

describe('the 45/0 geometry', () => {
  it('sees less than the port by 2 mm or more all round, and less than one lamp wholly lights', () => {
    expect(HEAD.portDiameter - seenAt(0).outer).toBeGreaterThanOrEqual(4);
    expect(litByOneLamp().full - seenAt(0).outer).toBeGreaterThanOrEqual(4);
  });

  it('looks within 10 degrees of the normal (CIE e-ILV 17-25-096 as quoted in hardware-notes/optics.md)', () => {
    expect(seenAt(0).steepestDegrees).toBeLessThan(10);
  });

  it('lights the middle at 45 degrees exactly, and the edge of the seen disc within 5', () => {
    const { r, z } = onLampAxis(HEAD.emitterDistance);
    expect(r).toBe(z);
    const { least, most } = lampAngles();
    expect(least).toBeGreaterThan(40);
    expect(most).toBeLessThan(50);
  });

  it('keeps every wall out of sight: the view cone passes port, cavity and baffles', () => {
    expect(seenAt(HEAD.plateThickness).outer).toBeLessThan(HEAD.portDiameter);
    expect(seenAt(HEAD.stopHeight - 0.01).outer).toBeLessThan(HEAD.viewTubeDiameter);
    const cone = (z: number): number => {
      const share = (z - HEAD.stopHeight) / (HEAD.sensorHeight - HEAD.stopHeight);
      return HEAD.sensorWindow * share + HEAD.stopDiameter * (1 - share);
    };
    for (const z of HEAD.baffleHeights) expect(cone(z)).toBeLessThan(HEAD.baffleDiameter);
  });

  it('has room for the lamp pockets side by side and between body and neck', () => {
    const { r } = onLampAxis(OUTER_FACE);
    const apart = 2 * r * Math.sin(Math.PI / HEAD.lamps);
    expect(apart).toBeGreaterThan(HEAD.pocketDiameter + 2);
    expect(r + HEAD.pocketDiameter / 2 / Math.SQRT2).toBeLessThan(HEAD.bodyRadius);
    expect(r - HEAD.pocketDiameter / 2 / Math.SQRT2).toBeGreaterThan(HEAD.neckRadius);
  });
});

describe.each(Object.entries(DRAWINGS))('sheet %s', (name, draw) => {
  const svg = draw().svg();

  it('is well-formed and says that it is an estimate', () => {
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(svg).toContain('Design estimate: never built, nothing measured.');
  });

  it('is the one committed; make it anew with hardware-notes/drawings/make-drawings.ts', () => {
    const committed = new URL(`../../hardware-notes/drawings/${name}.svg`, import.meta.url);
    expect(readFileSync(committed, 'utf8')).toBe(svg);
  });

  it('keeps its lines inside the frame', () => {
    const points = [...svg.matchAll(/points="([^"]+)"/g)].flatMap(([, list]) => list!.split(' '));
    expect(points.length).toBeGreaterThan(20);
    for (const point of points) {
      const [x, y] = point.split(',').map(Number);
      expect(x! >= 8 && x! <= 289 && y! >= 6 && y! <= 205, point).toBe(true);
    }
  });
});
