import { BENCH } from '../../../../server/api/sentences/bench.ts';
import { german } from './german.ts';

export const benchGerman = german(BENCH, {
  'no-route': '{request} gibt es nicht; in /api/openapi.json steht, was es gibt.',
  'nothing-at': 'Unter {path} ist nichts; öffnen Sie die erste Seite unter /.',
  failed:
    'Das Programm ist daran gescheitert; nichts Gemessenes ist verloren, und das Protokoll enthält die Einzelheiten.',
  'answers-to':
    'Der Messplatz antwortet nur auf {names}; öffnen Sie die Adresse, die das Programm ausgegeben hat.',
  'another-site':
    'Eine andere Seite darf den Messplatz nicht benutzen; öffnen Sie die Adresse, die das Programm ausgegeben hat.',
  'search-too-long':
    'Die Suche dauerte länger als zwei Minuten und wurde angehalten; nennen Sie mit "only" weniger Tuben.',
  stopping: 'Das Programm hält gerade an.',
  'worker-failed': 'Das Rechnen ist an dieser Anfrage gescheitert.',
  'pages-not-built':
    'Die Seiten sind nicht gebaut; beenden Sie das Programm, führen Sie im Projektordner „npm start“ aus und öffnen Sie diese Adresse noch einmal.',
  'not-paired':
    'Dieses Telefon ist nicht mit dem Messplatz verbunden; lassen Sie sich am Rechner unter „Dieser Bildschirm“ einen Code zeigen, und öffnen Sie die Adresse daneben.',
  'computer-alone': 'Telefone werden nur am Rechner verbunden und getrennt.',
  'pages-not-built-pair':
    'Die Seiten sind nicht gebaut; beenden Sie das Programm, führen Sie im Projektordner „npm start -- --pair“ aus und versuchen Sie es noch einmal.',
  'wrong-code': 'Das ist nicht der Code am Rechner; sehen Sie noch einmal hin und tippen Sie ihn neu.',
  'five-tries':
    'Fünf falsche Versuche haben diesen Code beendet; lassen Sie sich am Rechner einen neuen zeigen.',
  'code-over':
    'Dieser Code galt fünf Minuten, und die sind um; lassen Sie sich am Rechner einen neuen zeigen.',
  'no-code':
    'Der Rechner zeigt gerade keinen Code; lassen Sie sich unter „Dieser Bildschirm“ erst einen zeigen. Ein Code öffnet nur einmal.',
  'no-phone': 'Ein verbundenes Telefon „{id}“ gibt es nicht; es wurde schon getrennt.',
  'pairing-off':
    'Das Verbinden ist aus; beenden Sie das Programm und starten Sie es mit „npm start -- --pair“.',
  'computer-itself': 'Das ist der Rechner selbst; öffnen Sie die Adresse neben dem Code auf dem Telefon.',
  'percent-code': 'In der Adresse steht ein gestörter Prozentcode; verbessern Sie ihn.',
  'not-as-described': 'nicht wie beschrieben',
  'not-as-described-at':
    '{what}{place} ist nicht zu gebrauchen: {why}; in /api/openapi.json steht, was erlaubt ist.',
  'not-as-described-more':
    '{what}{place} ist nicht zu gebrauchen: {why} (und {count} weitere); in /api/openapi.json steht, was erlaubt ist.',
  'at-place': ', bei „{place}“,',
  'body-large': 'Der Inhalt ist größer, als diese Anfrage sein darf; schicken Sie eine kleinere Datei.',
  'body-not-json': 'Der Inhalt ist kein JSON; schicken Sie ein JSON-Dokument.',
  'body-encoding': 'Der Inhalt hat eine Kodierung, die dieses Programm nicht liest; schicken Sie UTF-8.',
  'body-unreadable': 'Der Inhalt lässt sich nicht lesen; schicken Sie ihn noch einmal.',
  'fit-not-running': 'Diese Anpassung läuft nicht, es gibt also nichts anzuhalten.',
  'no-palette-yet': 'Es gibt noch keine Palette; beginnen Sie eine im Regal.',
  'no-palette': 'Eine Palette „{id}“ gibt es nicht; wählen Sie eine im Regal.',
  alone: '{tube} ist {status}.',
  'tubes-compared': '{both} Tuben in beiden, {gone} weg, {added} neu.',
  'no-profile': 'Ein Profil „{id}“ gibt es nicht; wählen Sie eines auf der Seite Profil.',
  'no-constants':
    'Diese Palette hat noch keine Konstanten; messen Sie ihre Leitern und passen Sie sie an, oder nehmen Sie ein Profil auf.',
  'tube-of-other':
    '„{id}“ ist eine Tube einer anderen Palette an diesem Messplatz; geben Sie der neuen Tube eine andere id.',
  'not-a-set':
    '„{file}“ ist ein Palettenprofil; gebraucht wird hier ein Mustersatz, mit dem, was gemessen wurde.',
  'no-tube': 'Eine Tube „{id}“ gibt es nicht; wählen Sie eine im Regal.',
  'is-the-white-other':
    '„{tube}“ ist das Weiß, mit dem die Leitern dieser Palette gemacht sind; beginnen Sie für ein anderes Weiß eine andere Palette.',
  'no-practice-paint': 'Eine Übungsfarbe „{id}“ gibt es nicht; nehmen Sie eine von {known}.',
  'is-the-white':
    '„{tube}“ ist das Weiß, mit dem die Leitern dieser Palette gemacht sind; sie bleibt das Weiß.',
  'was-measured':
    '„{tube}“ wurde gemessen, und Messungen werden nie weggeworfen; räumen Sie die Tube stattdessen weg.',
  'store-not-opened':
    'Die Ablage {file} lässt sich nicht öffnen ({cause}); wählen Sie mit --data einen anderen Ordner.',
  'store-not-used':
    'Die Ablage {file} ist nicht zu gebrauchen ({cause}); spielen Sie eine Sicherung zurück, oder wählen Sie mit --data einen anderen Ordner.',
  'store-mode':
    'Die Ablage {file} öffnete sich als {mode}/{synchronous}, gebraucht wird wal/2, damit Messungen einen Stromausfall überstehen; legen Sie sie mit --data auf eine örtliche Platte.',
  'other-database': 'es ist die Datenbank eines anderen Programms',
  'newer-schema':
    'ihr Schema hat die Nummer {number}, und dieses Programm kennt {known}; nehmen Sie das neuere Programm',
  caution:
    '{pigments}: Farbe dieses Namens kann {what} enthalten. Tragen Sie Handschuhe, schleifen Sie keine trockenen Filme, essen und rauchen Sie nicht bei der Arbeit; das Sicherheitsdatenblatt Ihrer Tube und die örtlichen Regeln gehen vor.',
  'data-folder':
    'Der Datenordner {folder} lässt sich nicht anlegen ({cause}); wählen Sie mit --data einen anderen.',
});
