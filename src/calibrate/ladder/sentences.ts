/** The weighing plan of a ladder, its one next step, and masses that look swapped. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const LADDER = catalogue('ladder', {
  weigh: 'Weigh the {rung:said}',
  'weigh-how': 'Weigh each pour, enter what the scale shows, mix until no streak is left, and draw it down.',
  'plug-in': 'Plug in the head',
  'ladder-waits': 'The ladder waits where it was; every reading taken is kept.',
  'set-head': 'Set the head',
  'read-white': 'Read the white tile',
  'fit-tube': 'Fit this tube',
  'fit-how': 'All rungs are read; work out its constants.',
  'measure-more': 'Measure more',
  done: 'The ladder is complete and fitted.',
  'read-card': 'Read the bare card, {side:word} side',
  'read-card-how': "{count:said} more; stay clear of the film's edge.",
  'read-rung': 'Read the {rung:said}',
  'read-rung-over': 'Read the {rung:said} over {side:word}',
  'scale-step': 'scale step',
  'smallest-pour': 'smallest pour',
  'paint-per-rung': 'paint per rung',
  'grams-above-zero': 'The {what:said} is {grams:figure} g; give a number above zero.',
  'wanted-sigma': 'The wanted ratio error is {wanted:figure}; 0.05 % to 20 % is allowed.',
  'no-parts': 'A rung of {parts:figure} parts of white cannot be mixed; give zero or more.',
  'needs-masstone': 'A ladder needs the masstone: only it tells how the paint scatters; add it.',
  'rung-twice': 'The rung {rung:said} is named twice; leave one out and read it more often.',
  takes: 'Takes {tube:figure} of the tube and {white:figure} of white.',
  'least-sure':
    'The {rung:said} is the least sure: its ratio is good to {sigma:figure} on a scale that shows {resolution:figure} g.',
  'not-reached':
    'The wanted {wanted:figure} is not reached by any pile worth mixing; use a finer scale, or let down from an earlier rung.',
  'let-down-first':
    'Some rungs are let down from others: mix those first, and weigh from the pile while it is fresh.',
  'most-wasteful': 'The most wasteful way looked at would take {most:figure} in all, this one {this:figure}.',
  'large-pile':
    'The {rung:said} is a pile of {grams:figure}; a scale that shows 0.001 g would make it smaller.',
  'weigh-what-comes': 'Weigh what was really dispensed and enter that; do not chase the nominal ratio.',
  'white-parts': 'Parts of white are zero or more; {parts:figure} was given.',
  'reads-swapped':
    'Reads like {reads:said} where {entered:said} was entered: paint and white look swapped; check the masses.',
  'masses-swapped':
    '{paint:figure} g of paint to {white:figure} g of white is the {rung:said} the wrong way round; swap the two if that is what was poured.',
});
export const say: Say<typeof LADDER.templates> = LADDER.say;
