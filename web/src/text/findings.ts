/**
 * What the bench found, in the painter's language. The bench states findings as a code and an English sentence with
 * the figures in it; German is made here from both. A sentence that is not known here is shown as it came.
 */
import type { Finding } from '../../../server/api/words.ts';
import { settings } from '../state/settings.ts';

/** Said otherwise on the page than by the bench, in either language: a reading that counts is said to count. */
const SETTLING = {
  en: 'It counts. The lamp was still warming up, so should other readings disagree with it, read here again.',
  de: 'Sie gilt. Die Lampe wurde noch warm; weichen andere Messungen ab, messen Sie hier noch einmal.',
};

const comma = (figure: string | undefined): string => (figure ?? '').replace('.', ',');

/** English of the bench, as its own sources write it, and what stands for it in German. */
const GERMAN: readonly (readonly [RegExp, string | ((...parts: string[]) => string)])[] = [
  [
    /^The lamp is still warming up; wait a minute before readings that count\.$/,
    'Die Lampe wird noch warm; warten Sie eine Minute, bevor eine Messung zählt.',
  ],
  [
    /^This head sends no checksums, so a digit damaged/,
    'Dieser Kopf schickt keine Prüfsummen, eine im Kabel verstümmelte Ziffer kann unbemerkt bleiben; nehmen Sie ein kurzes Kabel und messen Sie dreimal.',
  ],
  [
    /^The black trap is not read, so dark colours read a little too light; read it when you can\.$/,
    'Die Lichtfalle ist nicht gemessen, dunkle Farben erscheinen etwas zu hell; messen Sie sie, sobald es geht.',
  ],
  [
    /^The reflectance of the white tile is not known and is taken as 1;/,
    'Die Reflexion der weißen Kachel ist nicht bekannt und gilt als 1; jede Messung bezieht sich darauf, bis Sie ihre Werte eingeben.',
  ],
  [
    /^(\d+) readings since the white; read the white tile again to close the block\.$/,
    (n) => `${n} Messungen seit dem Weiß; messen Sie die weiße Kachel wieder.`,
  ],
  [
    /^The white is (\d+) minutes old; read the white tile again\.$/,
    (n) => `Das Weiß ist ${n} Minuten alt; messen Sie die weiße Kachel wieder.`,
  ],
  [
    /^The head is ([\d.]+) K (warmer|colder) than at the white; read the white tile again\.$/,
    (k, way) =>
      `Der Kopf ist ${comma(k)} K ${way === 'warmer' ? 'wärmer' : 'kälter'} als beim Weiß; messen Sie die weiße Kachel wieder.`,
  ],
  [
    /^The white (fell|rose) by (\S+ ?%) in (.+) over this block, and (\S+ ?%) is allowed;/,
    (way, by, name, allowed) =>
      `Das Weiß ist in ${name} um ${comma(by)} ${way === 'fell' ? 'gefallen' : 'gestiegen'}, erlaubt sind ${comma(allowed)}; wischen Sie die Öffnung ab, lassen Sie die Lampe zur Ruhe kommen und messen Sie von vorn.`,
  ],
  [
    /^The light changed within this reading, so its bands do not belong together;/,
    'Das Licht hat sich während der Messung geändert, ihre Bänder gehören nicht zusammen; halten Sie den Kopf still, beschatten Sie ihn und messen Sie noch einmal.',
  ],
  [
    /^(.+) sees? the white tile no better than the black trap;/,
    (names) =>
      `${names}: das Weiß ist hier nicht heller als die Lichtfalle; prüfen Sie Lampe und Öffnung, dann messen Sie Weiß und Falle neu.`,
  ],
  [
    /^Leave the head on the white tile: (\d+) readings over (\d+ s) show whether it has settled\.$/,
    (n, span) =>
      `Lassen Sie den Kopf auf der weißen Kachel: ${n} Messungen über ${span} zeigen, ob er zur Ruhe kam.`,
  ],
  [
    /^Settled: the white moved by (\S+ ?%) over (\d+) readings in (\d+ s)\.$/,
    (by, n, span) => `Zur Ruhe gekommen: das Weiß ging in ${span} über ${n} Messungen um ${comma(by)}.`,
  ],
  [
    /^Steady so far \((\S+ ?%)\); (\d+) readings of the white over (\d+ s) settle it, and there are (\d+) over (\d+ s)\.$/,
    (by, n, span, have, had) =>
      `Bisher ruhig (${comma(by)}); sicher ist es nach ${n} Messungen des Weiß über ${span}, bisher sind es ${have} über ${had}.`,
  ],
  [
    /^Still settling: the white moved by (\S+ ?%) over (\d+) readings, and (\S+ ?%) is allowed;/,
    (by, n, allowed) =>
      `Noch nicht ruhig: das Weiß ging über ${n} Messungen um ${comma(by)}, erlaubt sind ${comma(allowed)}; lassen Sie die Lampe an.`,
  ],
  [
    /^The white moves again, by (\S+ ?%) over (\d+) readings;/,
    (by, n) =>
      `Das Weiß bewegt sich wieder, um ${comma(by)} über ${n} Messungen; warten Sie, bis es ruht, und messen Sie die weiße Kachel.`,
  ],
];

/** The parts of a trust line, which a profile carries in English. */
const TRUST: readonly (readonly [RegExp, string | ((...parts: string[]) => string)])[] = [
  [/^Read as spectra$/, 'Als Spektren gemessen'],
  [/^Read in a few bands$/, 'In wenigen Bändern gemessen'],
  [
    /^Low confidence: read as XYZ only, so say nothing of other lights$/,
    'Wenig verlässlich: nur als XYZ gemessen, sagt also nichts über anderes Licht',
  ],
  [
    /^no masstone was read, so its scattering is a guess from mixtures$/,
    'kein Vollton gemessen, die Streuung ist aus Mischungen geschätzt',
  ],
  [
    /^each rung is foretold by the others within ([\d.]+) CIEDE2000 on average$/,
    (dE) => `jede Stufe wird von den anderen im Mittel auf ${comma(dE)} CIEDE2000 vorhergesagt`,
  ],
  [
    /^the rungs foretell each other roughly, ([\d.]+) CIEDE2000 on average$/,
    (dE) => `die Stufen sagen einander ungefähr vorher, im Mittel auf ${comma(dE)} CIEDE2000`,
  ],
  [
    /^the rungs disagree, ([\d.]+) CIEDE2000 on average: paint and read the ladder again$/,
    (dE) =>
      `die Stufen widersprechen sich, im Mittel um ${comma(dE)} CIEDE2000: Leiter neu ausziehen und messen`,
  ],
  [/^too few rungs to check them against each other$/, 'zu wenige Stufen, um sie aneinander zu prüfen'],
];

function german(
  sentence: string,
  table: readonly (readonly [RegExp, string | ((...parts: string[]) => string)])[],
): string | undefined {
  for (const [english, said] of table) {
    const found = english.exec(sentence);
    if (found) return typeof said === 'string' ? said : said(...found.slice(1));
  }
  return undefined;
}

/** A sentence of the bench in the language of the page. */
export function benchSays(sentence: string): string {
  return settings().language === 'de' ? (german(sentence, GERMAN) ?? sentence) : sentence;
}

/** A finding in the language of the page. `kept`: it is about a reading that was kept for its rung. */
export function findingSays(finding: Pick<Finding, 'code' | 'sentence'>, kept = false): string {
  if (finding.code === 'settling' && kept) return SETTLING[settings().language];
  return benchSays(finding.sentence);
}

/** A tube's trust line in the language of the page; a line that another program wrote stays as it is. */
export function trustSays(line: string): string {
  if (settings().language !== 'de' || !line.endsWith('.')) return line;
  const parts = line
    .slice(0, -1)
    .split('; ')
    .map((part) => german(part, TRUST));
  return parts.every((part) => part !== undefined) ? `${parts.join('; ')}.` : line;
}
