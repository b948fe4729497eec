import { words } from './words.ts';

/** What stands on every printed sheet: of which palette, of what day, under which light, in which units. */
export const sheetWords = words(
  {
    palette: (title: string, made: string, geometry: string) =>
      `Palette: ${title}, profile of ${made}, read at ${geometry}.`,
    untitled: 'without a name',
    light: (white: string) =>
      `Colours for ${white}; value is Munsell’s, under C/2°; differences are CIEDE2000; parts and shares are by mass.`,
    notPaint: 'Printed colour is not paint colour: go by the figures, and by paint pulled on paper.',
    paletteIs:
      'Every tube: its rungs over a card with how far each is off (CIEDE2000), a thin film over it, absorption K, scattering S, and how far to trust them. Pull the paint itself into its box.',
    stringIs:
      'Equal steps of value from dark to light, each in grams. Mix a step, paint it into the box under it, and look along the row.',
    recipeIs: 'Weigh in this order, tick what is in the pile, write what the scale said.',
    studyIs: 'Prop it by the easel: families from dark to light, each by its number, with what to weigh.',
    ladderIs:
      'Weigh each rung and write what the scale said. Mix until no streak is left, pull one even film over black and white, let it dry, read it.',
    correctionIs: 'What to add to a pile that came out wrong. Nothing is taken out.',
    correctionTitle: 'Correction slip',
    inThePile: 'In the pile now',
    add: 'Add',
    slip: 'Slip to print',
    after: 'after it',
    paint: 'paint',
    weighed: 'weighed',
    total: 'in all',
    pulledOn: 'pulled on',
    wetFilm: 'wet film',
    bar: 'Bar',
    white: 'White',
    batch: 'Batch',
    readBy: 'Read with',
    remarks: 'Remarks',
  },
  {
    palette: (title, made, geometry) => `Palette: ${title}, Profil vom ${made}, gemessen bei ${geometry}.`,
    untitled: 'ohne Namen',
    light: (white) =>
      `Farben für ${white}; Tonwert nach Munsell, unter C/2°; Unterschiede sind CIEDE2000; Teile und Anteile nach Masse.`,
    notPaint:
      'Gedruckte Farbe ist nicht die Farbe der Paste: es gelten die Zahlen und was auf Papier aufgezogen wird.',
    paletteIs:
      'Jede Tube: ihre Sprossen über einer Karte, mit dem Abstand einer jeden (CIEDE2000), ein dünner Film darüber, Absorption K, Streuung S, und wie weit ihnen zu trauen ist. Die Farbe selbst in ihr Feld aufziehen.',
    stringIs:
      'Gleiche Tonwertschritte von dunkel nach hell, jeder in Gramm. Einen Schritt mischen, in das Feld darunter malen und die Reihe entlang schauen.',
    recipeIs: 'In dieser Reihe wägen, abhaken, was im Haufen ist, und aufschreiben, was die Waage sagte.',
    studyIs:
      'Neben die Staffelei stellen: Familien von dunkel nach hell, jede mit ihrer Nummer und dem, was zu wägen ist.',
    ladderIs:
      'Jede Sprosse wägen und aufschreiben, was die Waage sagte. Mischen, bis keine Schliere bleibt, einen gleichmäßigen Film über Schwarz und Weiß ziehen, trocknen lassen, messen.',
    correctionIs: 'Was zu einem Haufen kommt, der anders geworden ist. Herausgenommen wird nichts.',
    correctionTitle: 'Korrekturzettel',
    inThePile: 'Jetzt im Haufen',
    add: 'Dazugeben',
    slip: 'Zettel zum Drucken',
    after: 'danach',
    paint: 'Farbe',
    weighed: 'gewogen',
    total: 'zusammen',
    pulledOn: 'gezogen am',
    wetFilm: 'nasser Film',
    bar: 'Rakel',
    white: 'Weiß',
    batch: 'Charge',
    readBy: 'Gemessen mit',
    remarks: 'Bemerkungen',
  },
);
