/** What a study cannot be made of. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const STUDY = catalogue('study', {
  'no-paint': 'The recipe has no paint in it; a recipe has at least one tube with a mass above zero.',
  'canvas-width': 'canvas width',
  'canvas-height': 'canvas height',
  'times-needed': 'times the paint needed',
  'out-of-range':
    'The {name:said} is {value:figure} {unit:said}; it lies between {low:figure} and {high:figure} {unitAgain:said}. Mend it.',
  steps: '{steps:figure} value steps were asked for; a study has 2 to 9. Choose a whole number between.',
  share: 'A smallest share of {share:figure} was asked for; it lies between 0 and 0.5 of the area.',
  specks: 'Specks up to {pixels:figure} pixels were asked for; give a whole number from 0 to 20.',
  'picture-size':
    'The picture is {width} by {height} pixels; each side is a whole number from 1 to {most}. Choose another picture.',
  'picture-numbers':
    'A picture of {width} by {height} pixels has {count} numbers; {given} were given. Open it again.',
  crop: 'The crop ({width} by {height} at {x}, {y}) reaches outside the picture of {pictureWidth} by {pictureHeight} pixels; draw it inside.',
  'no-recipe': 'There is no recipe to pour; find one for the family first.',
  'value-steps': '{count:figure} value steps were asked for; ask for a whole number from 1 up.',
});
export const say: Say<typeof STUDY.templates> = STUDY.say;
