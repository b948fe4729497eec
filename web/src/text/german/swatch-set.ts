import { SWATCH_SET } from '../../../../src/calibrate/swatch-set/sentences.ts';
import { german } from './german.ts';

export const swatchSetGerman = german(SWATCH_SET, {
  'response-rows':
    'Die Empfindlichkeit des Geräts hat {rows} Zeilen und seine Messungen {channels} Kanäle; geben Sie eine Zeile je Kanal.',
  'response-row':
    'Zeile {row} der Empfindlichkeit des Geräts hat {numbers} Zahlen für {wavelengths} Wellenlängen; geben Sie eine je Wellenlänge.',
  'response-sum':
    'Zeile {row} der Empfindlichkeit des Geräts ergibt zusammen {sum}; jede Zeile ergibt 1, teilen Sie sie also durch ihre Summe.',
  'not-ascending':
    'In {at} folgt {nm} nm auf {before} nm; Wellenlängen steigen, ordnen Sie sie also samt ihren Messungen.',
  'unknown-tube':
    '„{by}“ nennt die Tube „{id}“, die nicht unter den Tuben ist ({known}); nehmen Sie sie auf oder verbessern Sie den Namen.',
  'unknown-swatch':
    '„{by}“ ist aus dem Muster „{id}“ gemacht, das nicht im Dokument steht; nehmen Sie es auf oder geben Sie die Massen.',
  'made-from-itself':
    '„{id}“ ist über „{by}“ aus sich selbst gemacht; eine Kette von Verdünnungen beginnt bei Tuben, verbessern Sie also "made".',
  'masses-or-made': '„{id}“ hat {what}; geben Sie eines von beiden.',
  'both-masses-and-made': 'sowohl masses als auch made',
  'neither-masses-nor-made': 'weder masses noch made',
  'no-paint': '„{id}“ enthält keine Farbe; geben Sie mindestens eine Masse über 0.',
  unreadable:
    '{what} lässt sich nicht lesen: {issue}; verbessern Sie {at} und nehmen Sie die Datei noch einmal auf.',
  'the-swatch-set': 'Der Mustersatz',
  'the-document': 'das Dokument',
  'not-json':
    'Die Datei ist kein JSON ({cause}); ein Mustersatz ist ein JSON-Dokument, wählen Sie also eine andere Datei.',
  'not-an-object':
    'Ein Mustersatz ist ein JSON-Objekt; gegeben wurde etwas anderes, wählen Sie also eine andere Datei.',
  format:
    'Das Dokument nennt das Format {format}; bei einem Mustersatz steht "swatch-set", wählen Sie also eine andere Datei.',
  version:
    'Der Mustersatz hat die Version {version}; dieses Programm liest Version 1, nehmen Sie also ein neueres Programm oder schreiben Sie ihn als Version 1.',
  'swatches-or-checks': 'Muster oder Proben',
  'the-backing': 'Der Untergrund „{id}“',
  'one-per-channel': 'eine je Kanal',
  'two-whites':
    'Die Tuben {tubes} haben alle die Rolle des Weiß; geben Sie sie der, mit der die Aufhellungen gemacht wurden.',
  'no-white':
    'Keine Tube hat die Rolle des Weiß; geben Sie der, mit der die Aufhellungen gemacht wurden, "role": "white".',
  'empty-check': 'Die Probe „{id}“ hat weder Messungen noch eine Wahrheit; geben Sie eines von beiden.',
  'one-per-wavelength': 'eine je Wellenlänge',
  'one-per-10-nm': 'eine je 10 nm, 380 bis 730 nm',
  'the-truth': 'Die Wahrheit der Probe „{id}“',
  'same-id': '{words}: zwei haben die id „{id}“; geben Sie jedem eine eigene.',
  numbers:
    '{who}: {count} Zahlen, gebraucht werden {wanted}, {what}; prüfen Sie, bei welchen Wellenlängen gemessen wurde.',
  'divide-by-100': 'das sieht nach Prozent aus, teilen Sie also durch 100',
  'read-again': 'messen Sie es noch einmal',
  'factor-range':
    '{who}: {value} in Kanal {channel}; ein Reflexionsgrad geht von 0 bis etwas über 1, {advice}.',
  'the-reading': 'Messung {number} von {word} „{id}“',
  'unknown-first-reading':
    'Das Muster „{id}“ soll „{first}“ noch einmal gemessen sein, das vorher nicht im Dokument steht; ergänzen Sie es oder berichtigen Sie den Namen.',
  'unknown-backing':
    '{word} „{id}“ liegt auf dem Untergrund „{backing}“, der nicht unter den Untergründen ist; nehmen Sie die Messung der leeren Karte auf.',
  'no-backing':
    '{word} „{id}“ ist ein Film endlicher Dicke ohne Untergrund; nennen Sie die Karte, auf der er liegt, oder nennen Sie den Film deckend.',
  'shared-drawdown':
    '„{other}“ und „{id}“ teilen den Aufzug „{drawdown}“ und unterscheiden sich in Mischung oder Dicke; ein Aufzug ist ein Film, geben Sie ihnen also zwei.',
  'white-masstone':
    'Vom Weiß „{id}“ gibt es keinen Vollton unter den Mustern; jede Aufhellung wird dagegen gemessen, malen und messen Sie es also für sich.',
  'tube-masstone':
    'Von der Tube „{id}“ gibt es keinen Vollton unter den Mustern (das Stärkste hat {percent} %); nur der Vollton sagt ihre Streuung, malen und messen Sie die Farbe also für sich.',
});
