import { words } from './words.ts';

/** The words of the trade this program uses, each with a sentence. They explain themselves where they stand. */
export const vocabularyWords = words(
  {
    tube: { name: 'tube', means: 'One tube of paint, your own, with its label, batch and pigment codes.' },
    pigment: {
      name: 'pigment code',
      means: 'The Colour Index generic name printed small on a tube: PB29, PY43.',
    },
    masstone: { name: 'masstone', means: 'A paint by itself, as it comes from the tube.' },
    tint: { name: 'tint', means: 'A paint let down with white, in parts by weight.' },
    rung: { name: 'rung', means: 'One step of a ladder: the masstone, or one tint.' },
    ladder: {
      name: 'ladder',
      means: 'The masstone and its tints with one white, 1:1, 1:4 and 1:16 by weight.',
    },
    drawdown: { name: 'drawdown', means: 'An even film of paint pulled over a card with a bar.' },
    card: { name: 'card', means: 'A sealed card, half black and half white, under a drawdown.' },
    swatch: { name: 'swatch', means: 'One painted patch that is read.' },
    reading: { name: 'reading', means: 'One press of the head on a swatch.' },
    dark: {
      name: 'dark',
      means: 'What the head counts with its lamp off. It is taken away from every reading.',
    },
    whiteTile: { name: 'white tile', means: 'A clean tile of known whiteness. It is what 1 means.' },
    blackTrap: {
      name: 'black trap',
      means: 'A deep black hole that sends no light back. It is what 0 means.',
    },
    geometry: {
      name: 'geometry',
      means: 'How the head lights and looks: 45/0, or d/8 with or without gloss.',
    },
    constants: {
      name: 'K and S',
      means:
        'How much a paint absorbs (K) and scatters (S) at each wavelength, by weight, next to your white.',
    },
    hiding: {
      name: 'hiding',
      means: 'Light back from over black, divided by light back from over white. At 0.98 a film hides.',
    },
    undertone: { name: 'undertone', means: 'The colour of a thin film over white.' },
    strength: { name: 'tinting strength', means: 'How strongly a tube colours white, next to another tube.' },
    value: { name: 'value', means: 'Light or dark on the Munsell scale, 0 black to 10 white.' },
    lean: {
      name: 'warm and cool',
      means: 'The lean of a colour to orange or to blue from the grey of its value.',
    },
    chroma: { name: 'chroma', means: 'How far a colour stands from grey.' },
    palette: { name: 'palette', means: 'The tubes in use, with one white.' },
    profile: { name: 'palette profile', means: 'The file that holds what was measured of your palette.' },
    recipe: { name: 'recipe', means: 'Grams or parts of your tubes for a wanted colour.' },
    addition: { name: 'addition', means: 'What to add to a pile that is already mixed.' },
    valueString: {
      name: 'value string',
      means: 'Equal steps of value from dark to light, each with its recipe.',
    },
    limits: { name: 'limits', means: 'What your palette can reach: darkest, lightest, greyest, strongest.' },
    family: { name: 'family', means: 'One region of a picture: a step of value, warm or cool.' },
    trust: { name: 'trust', means: 'What a number rests on: readings, how well they agree, and checks.' },
    difference: {
      name: 'colour difference',
      means: 'CIEDE2000: about 1 can just be seen edge to edge, 3 is plain, 10 is another colour.',
    },
  },
  {
    tube: { name: 'Tube', means: 'Eine Tube Farbe, Ihre eigene, mit Etikett, Charge und Pigmentkürzeln.' },
    pigment: {
      name: 'Pigmentkürzel',
      means: 'Der Colour-Index-Name, klein auf der Tube gedruckt: PB29, PY43.',
    },
    masstone: { name: 'Vollton', means: 'Eine Farbe für sich, wie sie aus der Tube kommt.' },
    tint: { name: 'Aufhellung', means: 'Eine Farbe mit Weiß verschnitten, in Gewichtsteilen.' },
    rung: { name: 'Sprosse', means: 'Eine Stufe der Leiter: der Vollton oder eine Aufhellung.' },
    ladder: {
      name: 'Leiter',
      means: 'Vollton und Aufhellungen mit einem Weiß, 1:1, 1:4 und 1:16 nach Gewicht.',
    },
    drawdown: {
      name: 'Aufzug',
      means: 'Ein gleichmäßiger Farbfilm, mit einer Rakel über eine Karte gezogen.',
    },
    card: { name: 'Karte', means: 'Eine versiegelte Karte, halb schwarz, halb weiß, unter dem Aufzug.' },
    swatch: { name: 'Muster', means: 'Ein gemaltes Feld, das gemessen wird.' },
    reading: { name: 'Messung', means: 'Ein Druck auf den Messkopf über einem Muster.' },
    dark: {
      name: 'Dunkelwert',
      means: 'Was der Kopf ohne Lampe zählt. Es wird von jeder Messung abgezogen.',
    },
    whiteTile: { name: 'Weißkachel', means: 'Eine saubere Kachel bekannter Weiße. Sie ist, was 1 bedeutet.' },
    blackTrap: {
      name: 'Schwarzfalle',
      means: 'Ein tiefes schwarzes Loch ohne Rückstrahlung. Sie ist, was 0 bedeutet.',
    },
    geometry: {
      name: 'Geometrie',
      means: 'Wie der Kopf leuchtet und schaut: 45/0, oder d/8 mit oder ohne Glanz.',
    },
    constants: {
      name: 'K und S',
      means: 'Wie stark eine Farbe je Wellenlänge schluckt (K) und streut (S), nach Gewicht, gegen Ihr Weiß.',
    },
    hiding: {
      name: 'Deckkraft',
      means: 'Licht über Schwarz, geteilt durch Licht über Weiß. Ab 0,98 deckt ein Film.',
    },
    undertone: { name: 'Unterton', means: 'Die Farbe eines dünnen Films über Weiß.' },
    strength: { name: 'Färbekraft', means: 'Wie stark eine Tube Weiß färbt, gegen eine andere Tube.' },
    value: { name: 'Tonwert', means: 'Hell oder dunkel nach Munsell, 0 schwarz bis 10 weiß.' },
    lean: {
      name: 'warm und kühl',
      means: 'Die Neigung einer Farbe zu Orange oder zu Blau, vom Grau gleichen Tonwerts aus.',
    },
    chroma: { name: 'Buntheit', means: 'Wie weit eine Farbe vom Grau entfernt ist.' },
    palette: { name: 'Palette', means: 'Die Tuben in Gebrauch, mit einem Weiß.' },
    profile: { name: 'Palettenprofil', means: 'Die Datei mit dem, was an Ihrer Palette gemessen wurde.' },
    recipe: { name: 'Rezept', means: 'Gramm oder Teile Ihrer Tuben für eine gewünschte Farbe.' },
    addition: { name: 'Zugabe', means: 'Was einem schon gemischten Haufen zuzugeben ist.' },
    valueString: {
      name: 'Tonwertreihe',
      means: 'Gleiche Schritte im Tonwert von dunkel nach hell, jeder mit Rezept.',
    },
    limits: { name: 'Grenzen', means: 'Was Ihre Palette erreicht: dunkelst, hellst, graust, stärkst.' },
    family: { name: 'Familie', means: 'Ein Bereich eines Bildes: eine Tonwertstufe, warm oder kühl.' },
    trust: { name: 'Vertrauen', means: 'Worauf eine Zahl ruht: Messungen, ihre Einigkeit und Proben.' },
    difference: {
      name: 'Farbabstand',
      means: 'CIEDE2000: etwa 1 ist Kante an Kante eben zu sehen, 3 deutlich, 10 eine andere Farbe.',
    },
  },
);
export type VocabularyWord = keyof ReturnType<typeof vocabularyWords>;
