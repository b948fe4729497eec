import { FIT } from '../../../../src/fit/sentences.ts';
import { german } from './german.ts';

export const fitGerman = german(FIT, {
  'in-darks': 'in den Dunkelheiten',
  'in-middles': 'in den Mitteltönen',
  'in-lights': 'in den Lichtern',
  advice: '{what}: Das senkt den Zweifel {where} von {before} auf {after} CIEDE2000.',
  'advice-repeat': 'Den Vollton von {tube} an drei weiteren Stellen messen',
  'advice-drawdown': 'Den Vollton von {tube} noch einmal aufziehen und messen',
  'advice-tint': 'Eine Aufhellung von {tube}, 1:{parts} mit {white}, dazunehmen',
  'advice-check': '{tube} 1:1 mit {other} mischen und als Muster messen',
  'read-spectral': 'Als Spektren gemessen',
  'read-bands': 'In wenigen Bändern gemessen',
  'read-tristimulus': 'Wenig verlässlich: nur als XYZ gemessen, sagt also nichts über anderes Licht',
  'no-masstone-read': 'kein Vollton gemessen, die Streuung ist aus Mischungen geschätzt',
  foretold: 'jede Sprosse wird von den anderen im Mittel auf {by} vorhergesagt',
  'foretold-roughly': 'die Sprossen sagen einander ungefähr vorher, im Mittel auf {by}',
  'rungs-disagree': 'die Sprossen widersprechen sich, im Mittel um {by}: Leiter neu aufziehen und messen',
  'too-few-rungs': 'zu wenige Sprossen, um sie aneinander zu prüfen',
  trust: '{parts}.',
  frame:
    'Aus allen Tuben zusammen gefunden: {parts}. Diese dienen den Mischungen: sie nehmen auf, was den Gleichungen entgeht, und sind keine Eigenschaften von Farbe oder Firnis.',
  'frame-inside': 'k2, das Licht, das die Oberfläche nach innen zurückwirft, ist {value}, auf {doubt} genau',
  'frame-haze': 'der Schleier der Oberfläche ist {value}, auf {doubt} genau',
  'frame-crowding':
    'ein Gramm des Weiß streut dünn verteilt {percent} % mehr als gedrängt im Vollton, auf {doubt} % genau',
  'y-is': 'Y ist {Y}',
  'light-for-both': '{read}: hell genug für ISO 6504-3 (über {iso}) und ASTM D2805 (über {astm}).',
  'light-for-one': '{read}: hell genug für ASTM D2805 (über {astm}), zu dunkel für ISO 6504-3 (über {iso}).',
  'dark-for-both':
    '{read}: zu dunkel für ISO 6504-3 (über {iso}) und ASTM D2805 (über {astm}), das Kontrastverhältnis ist also nur ein Hinweis.',
  'bridge-size':
    'Die Brücke „{bridge}“ hat {count} Streukonstanten; gebraucht werden {wanted}, passen Sie sie also erst im neuen Weiß an.',
  'combine-size':
    '„{tube}“ hat {k} und {s} Konstanten; beide Anpassungen brauchen {wanted}, passen Sie also erst jede an.',
  'combine-columns':
    'Die zwei Anpassungen von „{tube}“ haben {one} und {two} gemeinsame Spalten; bringen Sie beide erst in eine Palette.',
  'film-thickness': 'Ein Film ist dicker als 0; gegeben wurde {given}.',
  'contrast-ratio': 'Ein Kontrastverhältnis liegt zwischen 0 und 1; gegeben wurde {ratio}.',
  'never-hides': 'Ein Film mit K {K} und S {S} erreicht bei keiner Dicke ein Kontrastverhältnis von {ratio}.',
  'blind-band':
    'Ein Band des Geräts sieht nichts von 380 bis 730 nm; das Raster der Konstanten endet dort, lassen Sie es also weg.',
  'other-instruments':
    'Die nassen und die trockenen Messungen sind von verschiedenen Geräten; messen Sie beide mit einem, auf dieselbe Weise.',
  'no-same-id': 'Kein Muster hat in beiden Dokumenten dieselbe id; behalten Sie die ids beim Wiedermessen.',
  dried: '„{swatch}“ wurde beim Trocknen {way}: {deltaE} CIEDE2000{since}.',
  'dried-the-same':
    '„{swatch}“ zeigt keine Änderung beim Trocknen über das Rauschen der Messungen hinaus{since}.',
  'more-colourful': 'bunter',
  'shade-apart': 'eine Spur anders',
  since: ', von Tag {from} bis Tag {to}',
  exchanged:
    '„{one}“ und „{two}“ messen sich, als hätten sie die Plätze getauscht: sehen Sie die Beschriftung an und messen Sie beide noch einmal.',
  veiled:
    '„{rung}“ misst sich wie unter einem gleichmäßigen Schleier von {percent}, den die anderen Sprossen nicht haben: ein Fingerabdruck, Staub oder eine eingeschlagene Oberfläche. Reinigen Sie sie oder ölen Sie sie aus, und messen Sie noch einmal.',
  'even-darker':
    '„{rung}“ misst sich gleichmäßig um {percent} dunkler, als die anderen Sprossen vorhersagen, wie ein Film, der noch nass ist oder glänzender als die anderen: lassen Sie ihn so lange trocknen wie sie, und messen Sie noch einmal.',
  'odd-rung':
    '„{rung}“ misst sich nicht, wie die anderen Sprossen vorhersagen, und keine einfache Ursache erklärt es: sehen Sie das Feld an, und malen und messen Sie es neu.',
  'wrong-ratio':
    '„{rung}“ wurde als 1:{weighed} gewogen ({tube} zu Weiß) und misst sich wie 1:{reads}{swapped}. Das Verhältnis ist mit {percent} % Wahrscheinlichkeit falsch: malen Sie sie neu, oder verbessern Sie die Massen.',
  swapped: '; die beiden Massen scheinen vertauscht aufgeschrieben',
  'no-thickness':
    'Von keinem Aufzug dieser Messungen ist die Dicke bekannt, ein Film lässt sich also nicht in Mikrometern angeben; fragen Sie in Einheiten der Streuung des Weiß, oder geben Sie die Dicke eines Films an und passen Sie noch einmal an.',
  'no-noise': 'Die Messungen von „{swatch}“ haben kein Rauschen; geben Sie das Rauschen des Geräts.',
  'not-inverted': 'Die Krümmung ließ sich nicht umkehren; die Kosten sind hier vielleicht nicht endlich.',
  'most-iterations': 'Die höchste erlaubte Zahl von Schritten wurde gebraucht.',
  gradient: 'Der Gradient liegt innerhalb von `gtol` um null.',
  cost: 'Die Kosten fallen um weniger als `ftol` ihrer selbst.',
  step: 'Der Schritt ist kürzer als `xtol` des Punktes.',
  'reference-tint':
    'Die Vergleichsaufhellung absorbiert dort nicht mehr als das Weiß (K/S {paint} gegen {white}); geben Sie ihre größte Absorption.',
  'strength-of-white':
    '„{id}“ ist das Weiß der Aufhellungen; Färbekraft haben die Tuben, die man hineinmischt.',
  'strength-of-light':
    '„{id}“ ist so hell wie das Weiß; ein Verhältnis der halben Stärke braucht eine Farbe, die es abdunkelt.',
  'no-swatches':
    'Der Mustersatz enthält keine Muster zum Anpassen; ein Dokument aus Proben ist für "check", geben Sie also eines mit Mustern.',
  'no-masstone': 'Kein Vollton unter den Mustern: die Streuung ruht auf der stärksten Mischung.',
  'doubt-curves': 'den eigenen Kurven',
  'doubt-white': 'dem Weiß und der Oberfläche, die alle Tuben teilen',
  'doubt-others': 'den Tuben, mit denen sie gemischt wird',
  'doubt-equations': 'dem, was die Gleichungen nicht erfassen und keine Messung verkleinert',
  'doubt-share': '{percent} % des Zweifels kommen von {what}',
  'worst-in': ', am weitesten in {where} ({radius})',
  'holds-within': 'Mischungen mit ihr halten auf {radius} CIEDE2000{worst}; {share}.',
});
