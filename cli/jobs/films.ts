import { filmsRequestSchema } from '../../server/api/mix-advice.ts';
import { type Output, printJson, table } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import type { Rack } from '../rack.ts';
import type { PredictOptions } from '../verbs/predict.ts';
import { search, spectrumIn, viewing } from './mix.ts';

/** A mix as films over a ground: `predict --film`. */
export function runFilms(rack: Rack, options: PredictOptions, output: Output): void {
  if (options.film === undefined) {
    throw new CommandProblem("A glaze lies over a film; say how thick that is, such as --film '2'.", 2);
  }
  const request = filmsRequestSchema.parse({
    white: viewing(options),
    masses: rack.masses(options.masses),
    ground: groundOf(rack, options.ground),
    thicknesses: options.film.split(',').map((text) => thicknessOf(text, '--film')),
    unit: options.micrometres ? 'micrometres' : 'white scattering',
    glazes: (options.glaze ?? []).map((text) => glazeOf(rack, text)),
  });
  const found = search(rack, { kind: 'films', request });
  if (options.json) return printJson(output, found);
  const row = (name: string, { colour, interval }: typeof found.opaque, contrast: string): string[] => [
    name,
    colour.value.toFixed(2),
    colour.lean.toFixed(1),
    colour.Lab.L.toFixed(2),
    colour.Lab.a.toFixed(2),
    colour.Lab.b.toFixed(2),
    interval.radius95.toFixed(2),
    contrast,
  ];
  output.out(
    table(
      ['film', 'value', 'lean', 'L*', 'a*', 'b*', 'within', 'contrast'],
      [
        ...found.films.map((f) => row(String(f.thickness), f.prediction, f.contrast.toFixed(3))),
        row('opaque', found.opaque, '-'),
      ],
    ),
  );
}

function thicknessOf(text: string, option: string): number {
  const n = Number(text.trim());
  if (text.trim() === '' || !(n >= 0 && Number.isFinite(n))) {
    throw new CommandProblem(
      `${option} says "${text.trim()}"; give thicknesses of 0 or more, such as '0.5,1,2'.`,
      2,
    );
  }
  return n;
}

function glazeOf(rack: Rack, text: string) {
  const at = text.lastIndexOf('@');
  if (at < 0) {
    throw new CommandProblem(`"${text}" says no thickness; write masses@thickness, such as 'blue=1@0.3'.`, 2);
  }
  return { masses: rack.masses(text.slice(0, at)), thickness: thicknessOf(text.slice(at + 1), '--glaze') };
}

function groundOf(rack: Rack, text: string) {
  if (text === 'white' || text === 'black') return `${text} card`;
  return text.includes('=') ? { paint: rack.masses(text) } : { reflectance: spectrumIn(text) };
}
