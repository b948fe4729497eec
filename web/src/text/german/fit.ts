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
  'y-is': 'Y ist {Y}',
  'light-for-both': '{read}: hell genug für ISO 6504-3 (über {iso}) und ASTM D2805 (über {astm}).',
  'light-for-one': '{read}: hell genug für ASTM D2805 (über {astm}), zu dunkel für ISO 6504-3 (über {iso}).',
  'dark-for-both':
    '{read}: zu dunkel für ISO 6504-3 (über {iso}) und ASTM D2805 (über {astm}), das Kontrastverhältnis ist also nur ein Hinweis.',
  'bridge-size':
    'Die Brücke „{bridge}“ hat {count} Streukonstanten; gebraucht werden {wanted}, passen Sie sie also erst im neuen Weiß an.',
  'film-thickness': 'Ein Film ist dicker als 0; gegeben wurde {given}.',
  'contrast-ratio': 'Ein Kontrastverhältnis liegt zwischen 0 und 1; gegeben wurde {ratio}.',
  'never-hides': 'Ein Film mit K {K} und S {S} erreicht bei keiner Dicke ein Kontrastverhältnis von {ratio}.',
  'blind-band':
    'Ein Band des Geräts sieht nichts von 380 bis 730 nm; das Raster der Konstanten endet dort, lassen Sie es also weg.',
});
