import { INSTRUMENT } from '../../../../server/api/sentences/instrument.ts';
import { german } from './german.ts';

export const instrumentGerman = german(INSTRUMENT, {
  'port-gone': 'Der Messplatz benutzt diesen Anschluss nicht mehr; wählen Sie ihn am Messplatz noch einmal.',
  'own-lamp-first':
    'Die eigene Lampe des Kopfs ist noch nicht allein gemessen; schalten Sie das zweite Licht aus und messen Sie das zuerst.',
  'second-light-in':
    'Lassen Sie den Kopf liegen, lassen Sie ein ruhiges zweites Licht unter seinen Rand, etwa eine Taschenlampe, und messen Sie damit.',
  'second-light-weak':
    'Das zweite Licht hat nur {percent} % des eigenen, und 10 % ist das Wenigste, das etwas zeigt; rücken Sie es näher und messen Sie noch einmal.',
  'second-light-away': 'Nehmen Sie das zweite Licht weg.',
  'lift-begins':
    'Die Abhebeprobe beginnt ohne Unterlage; legen Sie den Kopf auf die Kachel und messen Sie erst die Höhe 0.',
  'shim-one': 'Legen Sie 0,1 mm unter die Füße des Kopfs und messen Sie noch einmal.',
  'shim-two':
    'Eine zweite Unterlage, zusammen 0,2 mm, macht es sicherer; oder nehmen Sie die Unterlagen weg.',
  'shims-away': 'Nehmen Sie die Unterlagen weg.',
  'trap-first':
    'Raumlicht zeigt sich an der Schwarzfalle; messen Sie erst Weißkachel und Schwarzfalle bei dieser Verstärkung.',
  scatter:
    'Eine Messung streut um {sigma} % der vollen Reflexion und {relative} % ihrer selbst, wie ihre Wiederholungen zeigen; eine Anpassung gewichtet Messungen danach.',
  'lowest-gain': 'Verstärkung {gain} ist die kleinste; stellen Sie eine größere und prüfen Sie noch einmal.',
  'todo-dark':
    'Decken Sie die Öffnung ab und messen Sie einmal den Dunkelwert, um zu sehen, dass kein Licht eindringt.',
  'todo-white': 'Legen Sie den Kopf auf die Weißkachel und messen Sie sie.',
  'todo-trap':
    'Legen Sie den Kopf auf die Schwarzfalle und messen Sie sie: das nimmt sein eigenes Streulicht heraus.',
  'todo-check': 'Messen Sie die Prüfkachel: sie zeigt, ob sich seit dem letzten Mal etwas geändert hat.',
  'no-checksum':
    'Dieser Kopf schickt keine Prüfsummen, eine im Kabel verstümmelte Ziffer kann unbemerkt bleiben; nehmen Sie ein kurzes Kabel und messen Sie dreimal.',
  'no-trap':
    'Die Schwarzfalle ist nicht gemessen, dunkle Farben messen sich ein wenig zu hell; messen Sie sie, sobald es geht.',
  none: 'Kein Gerät ist verbunden.',
  looking: 'Der Kopf wird gesucht.',
  'plug-in-again':
    'Stecken Sie den Kopf wieder an: er wird von selbst gefunden, und nichts bisher Gemessenes ist verloren.',
  'connect-one':
    'Verbinden Sie einen Kopf, nehmen Sie das Übungsgerät, oder tippen Sie Messungen von Hand ein.',
  ready: 'Bereit: legen Sie den Kopf auf ein Muster und messen Sie.',
  'not-waited-for': 'Auf den Anschluss wird nicht mehr gewartet.',
  'gain-measured':
    'Verstärkung {to} ist an diesem Kopf gegen {from} gemessen, Weiß und Falle gelten also weiter; messen Sie die Falle bei dieser Verstärkung, wenn es geht, an ihr zeigt sich Raumlicht.',
  'white-first': 'Die Weißkachel ist noch nicht gemessen; messen Sie sie erst am Messplatz.',
  'head-back':
    'Der Kopf ist wieder da, und seine Lampe ist vielleicht kalt; messen Sie die Weißkachel, bevor Sie weitermachen.',
  'head-restarted':
    'Der Kopf hat von selbst neu begonnen, und seine Lampe ist kalt; messen Sie die Weißkachel, bevor Sie weitermachen.',
  'press-set-aside':
    'Ein Druck auf den Knopf des Kopfs, der vor dem Wechsel kam, zählt nicht; drücken Sie noch einmal.',
  busy: 'Der Kopf misst gerade; warten Sie, bis er fertig ist.',
  lost: '{fault} Er wird von selbst gefunden, sobald er steckt; alles bisher Gemessene ist behalten.',
  'no-instrument':
    'Kein Gerät ist verbunden; verbinden Sie eines am Messplatz, oder tippen Sie die Messung ein.',
  'something-on-usb': 'etwas an USB',
  'no-port':
    'Kein Anschluss gefunden: stecken Sie den Kopf an, oder tippen Sie seinen Pfad ein, etwa /dev/ttyACM0 oder COM3.',
  'ports-found': '{count} {ports} gefunden; wählen Sie den des Kopfs.',
  'not-invented':
    'Das Übungsgerät misst nur erfundene Farben, und „{tube}“ ist keine; verbinden Sie einen echten Kopf, oder nehmen Sie das Übungsregal.',
  'lamp-warming': 'Die Lampe wird noch warm; warten Sie eine Minute, bevor eine Messung zählt.',
  'dark-good': 'Dunkel: höchstens {percent} % der Vollaussteuerung.',
  'dark-bad':
    'Ohne Lampe sieht der Kopf noch {percent} % der Vollaussteuerung, erlaubt sind 2 %; beschatten Sie ihn und messen Sie den Dunkelwert noch einmal.',
  'white-read': 'Weißkachel {times}-mal gemessen; sie füllt {percent} % der Skala.',
  'trap-read': 'Schwarzfalle gemessen: das eigene Streulicht des Kopfs ist herausgenommen.',
  'white-before': 'Die Weißkachel ist noch nicht gemessen; messen Sie sie, dann: {what}.',
  'tile-numbers': 'Die Kachel hat {numbers} Zahlen und der Kopf {channels} Kanäle; geben Sie eine je Kanal.',
  'tile-unknown':
    'Der Reflexionsgrad der Weißkachel ist nicht bekannt und gilt als 1; jede Messung bezieht sich darauf, bis Sie ihre Werte eingeben.',
  'white-closes':
    '{read} Seit dem Weiß davor hat sie sich um {by} bewegt, erlaubt ist {allowed}; {many} dazwischen {are} gegen beide gerechnet.',
  'block-sent-back': '{reason} {many} dieses Blocks {are} zurückgegeben.',
  'set-differently':
    'Der Kopf wurde anders gestellt, bevor ein Weiß diesen Block schloss; messen Sie noch einmal.',
  'read-white-first':
    '{reason} Messen Sie erst die Weißkachel noch einmal: bleibt es so, gehen zurück: {many}.',
  'connect-to-use': 'Verbinden Sie einen Kopf, um sie zu benutzen.',
  'values-for': 'Ihre Werte gelten für {head}; messen Sie sie mit diesem Kopf neu.',
  span: '{low} bis {high}',
  'head-sees': 'Dieser Kopf sieht {span}.',
  'no-tile': 'Eine solche Kachel gibt es nicht; vielleicht wurde sie weggeräumt.',
  'tile-of-other': '„{tile}“ wurde mit {head} gemessen; messen Sie sie mit diesem Kopf neu.',
  'sheet-colour':
    'Das Blatt einer Kachel gibt ihren Reflexionsgrad nach Wellenlänge; dieses gibt eine Farbe, tippen Sie also eine einzige Zahl ein.',
  'sheet-range':
    'Das Blatt sagt irgendwo {value}, und eine Weißkachel liegt zwischen 0,2 und 1,1; sehen Sie nach, ob es Prozent sind oder eine andere Kachel.',
  'set-on-unknown':
    'Der Kopf ist auf eine Kachel unbekannter Werte gestellt, über eine andere lässt sich also nichts sagen; geben Sie die Werte jener Kachel ein und messen Sie sie zuerst.',
  'placings-left':
    '{count} von {least} Auflagen; heben Sie die Kachel auf, legen Sie sie wieder hin und messen Sie.',
  placings:
    '{count} Auflagen; benennen Sie die Kachel und behalten Sie sie, oder legen Sie sie noch einmal auf, um sicherer zu sein.',
  'no-instrument-tile':
    'Kein Gerät ist verbunden; verbinden Sie eines am Messplatz, dann messen Sie die Kachel.',
  'practice-not-in-use':
    'Der Übungskopf ist nicht in Gebrauch; drücken Sie den Knopf des benutzten Kopfs, oder starten Sie das Übungsgerät.',
});
