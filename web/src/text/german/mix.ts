import { MIX } from '../../../../src/mix/sentences.ts';
import { german } from './german.ts';

export const mixGerman = german(MIX, {
  'tubes-at-once': '{count} Tuben lassen sich nicht auf einmal zugeben; geben Sie 1, 2 oder 3.',
  'pile-near-enough': 'Der Haufen ist nah genug, wie er ist ({deltaE}).',
  'nothing-nearer': 'Keine Zugabe bringt den Haufen näher: {split}.',
  'nothing-weighable':
    'Nichts, was diese Waage wiegen kann, bringt den Haufen näher: {list} täte es und liegt unter der kleinsten Menge von {smallest} g. Geben Sie etwas von einer gewogenen Vormischung dazu, oder mischen Sie erst mehr vom Haufen.',
  'grams-tube': '{grams} g {tube}',
  'near-enough': 'nah genug',
  still: 'noch {split}',
  waste:
    ' Das ist mehr Farbe, als neu zu mischen braucht; heben Sie den Haufen von {grams} g für etwas anderes auf.',
  add: 'Zugeben: {list}: {verdict} ({deltaE}).{waste}',
  'pile-unknown':
    'Vom Haufen ist nichts bekannt; geben Sie die Gramm an, die hineinkamen, oder eine Messung von ihm und seine Gramm.',
  'pile-grams': 'Der Haufen wiegt {grams}; wägen Sie ihn und geben Sie die Gramm mit seiner Messung an.',
  'nothing-known': 'nichts Bekanntes',
  'no-pour-changes': 'keine Menge ändert sich',
  kept: 'Die Farbe bleibt: {change}.',
  near: 'Fast die Farbe, {deltaE} bleiben ({split}): {change}.',
  'out-of-reach':
    'Diese Tuben geben die Farbe nicht mehr her: die nächste Mischung liegt um {deltaE} daneben (CIEDE2000; {split}). Suchen Sie ein anderes Rezept, oder nehmen Sie hin: {change}.',
  'grams-of': '{grams} g {tube}',
  'pour-none': 'kein {tube} (bisher {was})',
  pour: '{grams} g {tube} (bisher {was})',
  'unknown-carried':
    'Die Palette hat keine Tube „{id}“; die alte und die neue Tube werden beide gebraucht, und sie hat {known}.',
  'unknown-tube': 'Die Palette hat keine Tube „{id}“; sie hat {known}.',
  'same-place': '„{tube}“ soll an die Stelle von zwei Tuben; geben Sie jeder alten Tube ihre eigene.',
  clash:
    '„{tube}“ ist schon im Rezept und soll auch noch eine andere Tube ersetzen; nehmen Sie es erst aus dem Rezept.',
  'carried-grams': 'Die übertragene Mischung soll {grams} g wiegen; geben Sie Gramm über 0.',
  'values-lost': 'Der Tonwert {list} ist mit der neuen Tube nicht zu halten.',
  'steps-off':
    '{some} von {of} Schritten behalten ihren Tonwert und nicht ihre Farbe (bis zu {most} CIEDE2000 daneben).',
  'no-checks':
    'Der Mustersatz enthält keine Proben; geben Sie einen, dessen "checks" nie angepasste Mischungen sind.',
  'other-geometry':
    'Die Proben wurden bei {checks} gemessen, und das Profil ist für {profile}; beide messen verschiedene Oberflächen, messen Sie die Proben also mit der Geometrie des Profils neu.',
  'film-thickness':
    'Ein Film kann nicht {thickness} dick sein; geben Sie 0 oder mehr, in Einheiten der Streuung des Weiß oder in Mikrometern.',
  'no-thickness-known':
    'Dieses Profil kennt keine Filmdicke, Mikrometer sagen ihm also nichts; messen Sie einen Aufzug bekannter Dicke über Schwarz und Weiß, oder geben Sie die Dicke in Einheiten der Streuung des Weiß.',
  micrometres: 'Ein Film von {um} µm kann nicht sein; geben Sie 0 oder mehr Mikrometer.',
  'with-itself': '„{tube}“ mit sich selbst gemischt bleibt, wie es ist; nennen Sie zwei Tuben.',
  points: '{count} Punkte lassen sich nicht zwischen zwei Tuben legen; geben Sie 3 bis 1000.',
  'share-of': '{percent} % {tube} nach Gewicht',
  'mixes-cleanly': '{one} und {two} mischen sich rein: die stumpfste Mischung behält Buntheit {chroma}.',
  'kill-each-other':
    '{one} und {two} löschen einander aus: bei {at} fällt die Buntheit auf {chroma}, ein Grau vom Tonwert {value}.',
  'one-grey': '{grey} ist selbst fast grau: es vergraut {other} und kann daraus keinen Schlamm machen.',
  'both-grey': '{one} und {two} sind beide fast grau: Buntheit ist keine zu verlieren.',
  'dull-each-other': '{one} und {two} machen einander stumpf: bei {at} fällt die Buntheit auf {chroma}.',
  nudge: '„{nudge}“ ist kein Schritt; nehmen Sie {known}.',
  hues: '{count} Farbtöne lassen sich nicht umrunden; geben Sie eine ganze Zahl von 3 bis 360.',
  value: 'Tonwert {value} liegt nicht auf der Skala; Munsell-Tonwerte gehen von 0 bis 10.',
  'all-in-use':
    'Alle Tuben des Profils sind schon in Gebrauch; wählen Sie weniger, oder stellen Sie eine Tube ins Regal.',
  'too-far': 'um {by} zu {way}',
  'too-strong': 'um {by} zu {way}',
  'value-kept': 'Tonwert gehalten',
  'value-off': 'um {by} Tonwert zu {way}',
  'all-kept': 'Tonwert, Buntheit und Farbton gehalten',
  count: '{what}: {value}; geben Sie eine ganze Zahl von 1 bis {most}.',
  'most-tubes': 'Die meisten Tuben in einem Rezept',
  recipes: 'Die Zahl der Rezepte',
  amount:
    'Die Menge der Mischung ist {grams} g und das Unentschieden {tie}; geben Sie für beide Zahlen über 0.',
  'within-reach': 'In Reichweite dieser Tuben.',
  nearest: 'Außer Reichweite dieser Tuben; die nächste Mischung: {split}.',
  'reading-size':
    'Die Messung hat {numbers} Zahlen und ihr Gerät {channels} Kanäle; es müssen gleich viele sein, mindestens eine.',
  'channel-weights': 'Kanal {channel} hat {weights} Gewichte; das Raster hat {grid}.',
  'channel-reads': 'Kanal {channel} misst {value}; geben Sie Reflexionsgrade von 0 bis etwa 1.',
  lab: 'L* {L}, a* {a}, b* {b} unter {white}',
  'wanted-not-a-number':
    'In der gewünschten Farbe {lab} steht etwas, das keine Zahl ist; geben Sie drei Zahlen.',
  'wanted-lightness':
    'Die gewünschte Farbe {lab} ist keine Oberfläche: L* geht von 0 (schwarz) bis 100 (weiß).',
  'wanted-outside':
    'Die gewünschte Farbe {lab} liegt außerhalb des Spektralfarbenzugs, wo kein Licht ist; prüfen Sie die Zahlen und ihre Vorzeichen.',
  'wanted-reflectance':
    'Die gewünschte Reflexion ist {value} an Stelle {sample} von {of}; geben Sie Grade von 0 bis 1, nicht Prozent.',
  priority: 'Der Vorrang „{priority}“ ist nicht bekannt; nehmen Sie einen von {known}.',
  'no-metamerism':
    'Ein Muster, das nichts zurückwirft, hat keine Metamerie; vergleichen Sie zwei Farben, die man sehen kann.',
  'too-little':
    '{grams} g Mischung lassen sich nicht abwägen, wenn die kleinste Menge {smallest} g ist; verlangen Sie mehr, oder nennen Sie eine feinere Waage.',
  'scale-steps': 'Eine Waage kann keine Schritte von {grams} g zeigen; geben Sie, was sie zeigt, etwa 0,01.',
  'smallest-pour': 'Die kleinste Menge ist {grams} g; geben Sie Gramm über 0, etwa {such}.',
  parts: '{parts} Teile lassen sich nicht abzählen; geben Sie eine ganze Zahl von 1 bis {most}.',
  'too-many-parts':
    '{parts} Teile aus {tubes} Tuben sind zu viele zum Abzählen; verlangen Sie weniger Teile oder ein Rezept aus weniger Tuben.',
  density:
    'Volumenteile brauchen die Dichte jeder Tube, und die von „{id}“ ist nicht bekannt; tragen Sie sie ein, oder mischen Sie nach Gewicht.',
  stopped: 'Die Suche wurde vor dem Ende angehalten; fragen Sie noch einmal, um sie neu zu beginnen.',
  'tube-size':
    'Die Tube „{id}“ hat {k} Absorptions- und {s} Streukonstanten; gebraucht werden je {grid}, passen Sie sie also neu an oder nehmen Sie die Datei noch einmal auf.',
  'tube-number':
    'Die Tube „{id}“ hat an Stelle {sample} von {of} eine Konstante, die keine Zahl ist; passen Sie sie neu an oder nehmen Sie die Datei noch einmal auf.',
  'no-tubes':
    'Die Palette enthält keine Tuben; messen Sie mindestens eine, oder nehmen Sie eine auf, bevor Sie mischen.',
  'all-left-out': 'Alle Tuben wurden weggelassen; wählen Sie mindestens eine zum Mischen.',
  'same-id': 'Zwei Tuben haben die id „{id}“; geben Sie jeder eine eigene.',
  mass: 'Die Masse von „{id}“ ist {mass}; geben Sie eine Zahl in Gramm, 0 oder mehr.',
  'no-paint': 'Die Mischung enthält keine Farbe; geben Sie mindestens eine Masse über 0.',
  'highlight-warmth':
    'Ein Glanzlicht, das um {warmth} wärmer ist, ist nicht warm; geben Sie CIELAB-Einheiten über 0, etwa 3.',
  'no-highlight':
    'Keine Tube der Palette wärmt das Weiß um {warmth}; verlangen Sie weniger, oder nehmen Sie eine warme Tube dazu.',
  'string-value':
    'Tonwert {value} liegt nicht auf der Skala; Munsell-Tonwerte gehen von 0 (schwarz) bis 10 (weiß).',
  'string-steps': 'Eine Tonwertreihe mit {steps} Schritten lässt sich nicht legen; geben Sie 2 bis {most}.',
  'string-grams': 'Jeder Schritt soll {grams} g wiegen; geben Sie Gramm über 0.',
  'string-lean': 'Eine Neigung von {lean} ist keine Zahl; geben Sie CIELAB-Einheiten, über 0 für warm.',
  'string-white': '„{tube}“ ist das Weiß selbst; nennen Sie die Tube, die damit aufgehellt werden soll.',
  'string-none': 'Keine Mischung dieser Tuben hat den Tonwert {values}; sie gehen von {low} bis {high}.',
  'string-others': 'Tonwert {values} nimmt andere Tuben als der Rest der Reihe.',
  'string-off': 'Bei Tonwert {value} ist das Nächste um {by} zu {way}.',
  'pre-tint-none':
    '{tube} liegt unter der kleinsten Menge und bleibt weg; auch mit {light} aufgehellt ließe sie sich hier nicht wiegen. Mischen Sie mehr, oder nennen Sie eine feinere Waage.',
  'pre-tint-overdone':
    '{tube} liegt unter der kleinsten Menge und wird mit der kleinsten genommen, was man sieht; auch mit {light} aufgehellt ließe sie sich hier nicht wiegen. Mischen Sie mehr, oder nennen Sie eine feinere Waage.',
  'pre-tint-not-worth':
    '{tube} liegt unter der kleinsten Menge und bleibt weg: eine Vormischung damit brächte die Mischung um höchstens {gain} näher.',
  'pre-tint-same':
    '{tube} liegt unter der kleinsten Menge und bleibt weg: ohne sie ist die Mischung ebenso nah.',
});
