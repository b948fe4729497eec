import { ASSUMED_WEIGHING } from '../../src/calibrate/swatch-set/piles.ts';
import { GEOMETRIES, type SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import type { ImportPreview, ImportRequest } from '../api/imports.ts';
import type { OpenedFile } from './open-file.ts';
import { say } from '../api/sentences/importing.ts';

/** What a file holds and what was assumed about it, before anything is kept. */
export function previewOf(request: Pick<ImportRequest, 'fileName'>, opened: OpenedFile): ImportPreview {
  if (opened.kind === 'palette profile') {
    const { profile } = opened;
    return {
      kind: opened.kind,
      title: profile.title ?? request.fileName,
      source:
        profile.generator.name === 'tintladder'
          ? say('by-this-program')
          : say('written-by', { program: profile.generator.name }),
      geometry: profile.geometry,
      readings: profile.tubes.find((tube) => tube.evidence)?.evidence?.readings ?? null,
      tubes: profile.tubes.map((tube) => ({
        id: tube.id,
        label: tube.label,
        pigments: tube.pigments,
        swatches: 0,
      })),
      white: profile.white,
      swatchCount: 0,
      checkCount: 0,
      readingCount: 0,
      assumptions: [],
      warnings: [],
    };
  }
  const { set, answered } = opened;
  return {
    kind: opened.kind,
    title: set.title ?? request.fileName,
    source: set.source ?? '',
    geometry: set.instrument.geometry,
    readings: set.instrument.kind,
    tubes: set.tubes.map((tube) => ({
      id: tube.id,
      label: tube.label ?? tube.id,
      pigments: tube.pigments ?? [],
      swatches: set.swatches.filter((s) => mentions(s, tube.id)).length,
    })),
    white: set.tubes.find((tube) => tube.role === 'white')?.id ?? null,
    swatchCount: set.swatches.length,
    checkCount: set.checks.length,
    readingCount:
      set.swatches.reduce((n, s) => n + s.readings.length, 0) +
      set.checks.reduce((n, c) => n + (c.readings?.length ?? 0), 0),
    assumptions: [
      ...answered.map((a) => ({
        ...a,
        options: optionsFor(a.member, set),
      })),
      ...assumed(set),
    ],
    warnings: warnings(set),
  };
}

function assumed(set: SwatchSet): ImportPreview['assumptions'] {
  const all: ImportPreview['assumptions'] = [];
  const { geometryNote } = set.instrument;
  if (geometryNote) {
    all.push({
      member: 'geometry',
      value: set.instrument.geometry,
      sentence: say('geometry-note', { note: geometryNote }),
      options: [...GEOMETRIES],
    });
  }
  if (!set.weighing && 'relativeSigma' in ASSUMED_WEIGHING) {
    const percent = 100 * ASSUMED_WEIGHING.relativeSigma;
    all.push({
      member: null,
      value: `${percent} %`,
      sentence: say('weighing-assumed', { percent }),
      options: [],
    });
  }
  if (!set.noise) {
    all.push({
      member: null,
      value: say('from-repeats'),
      sentence: say('noise-assumed'),
      options: [],
    });
  }
  const plain = set.tubes.filter((tube) => tube.label === undefined).length;
  if (plain > 0) {
    all.push({
      member: null,
      value: String(plain),
      sentence: say('no-label', { count: plain }),
      options: [],
    });
  }
  return all;
}

function optionsFor(member: ImportPreview['assumptions'][number]['member'], set: SwatchSet): string[] {
  switch (member) {
    case 'geometry':
      return [...GEOMETRIES];
    case 'white':
      return set.tubes.map((tube) => tube.id);
    case 'scale':
      return ['fraction', 'per cent'];
    case 'decimalComma':
      return ['true', 'false'];
    default:
      return [];
  }
}

function warnings(set: SwatchSet): string[] {
  const idle = set.tubes.filter((tube) => !set.swatches.some((s) => mentions(s, tube.id)));
  return idle.map((tube) => say('in-no-swatch', { tube: tube.label ?? tube.id }));
}

function mentions(swatch: SwatchSet['swatches'][number], tubeId: string): boolean {
  if (swatch.masses) return (swatch.masses[tubeId] ?? 0) > 0;
  return (swatch.made ?? []).some((part) => 'tube' in part && part.tube === tubeId);
}
