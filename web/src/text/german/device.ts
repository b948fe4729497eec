import { DEVICE } from '../../../../src/device/sentences.ts';
import { german } from './german.ts';

export const deviceGerman = german(DEVICE, {
  'the-port': 'dem Anschluss',
  'a-channel': 'einem Kanal',
  'no-serial-support':
    'Serielle Anschlüsse lassen sich an diesem Rechner nicht benutzen ({cause}); alles andere geht; tippen Sie Messungen ein, nehmen Sie eine Datei auf, oder führen Sie auf diesem Rechner noch einmal „npm ci“ aus.',
  'no-library': 'die Bibliothek für Anschlüsse ließ sich nicht laden',
  permission:
    '{port} darf von diesem Benutzer nicht geöffnet werden; serielle Anschlüsse gehören einer Gruppe (meist dialout, auf manchen Systemen uucp); führen Sie „sudo usermod -aG dialout $USER“ aus, melden Sie sich ab und wieder an, dann verbinden Sie.',
  busy: '{port} wird von einem anderen Programm benutzt; einen Kopf hält immer nur ein Programm; schließen Sie das andere (ein Terminal, ein zweites Fenster, eine Modemverwaltung) und verbinden Sie noch einmal.',
  waiting:
    '{port} wird von einem anderen Programm benutzt, etwa einer Modemverwaltung, die jeden neuen Anschluss ansieht; gewartet wird bis zu {limit}; schließen Sie das andere Programm, oder hören Sie auf zu warten.',
  'busy-or-denied':
    '{port} ließ sich nicht öffnen; meist hält ein anderes Programm den Anschluss, manchmal fehlt dem Benutzer das Recht; schließen Sie andere Programme mit seriellen Anschlüssen und verbinden Sie noch einmal.',
  missing:
    '{port}: diesen Anschluss gibt es jetzt nicht; ein Kopf erscheint ein, zwei Sekunden nach dem Anstecken; prüfen Sie das Kabel, dann wählen Sie den Anschluss noch einmal.',
  'not-a-serial-port':
    '{port} ist kein serieller Anschluss; solche heißen etwa /dev/ttyACM0, /dev/ttyUSB0, /dev/cu.usbmodem1 oder COM5; wählen Sie einen aus der Liste.',
  'open-timeout':
    '{port} öffnete sich nicht innerhalb von {limit}; ein gesundes Gerät öffnet sich sofort; ziehen Sie den Kopf ab, stecken Sie ihn wieder an und verbinden Sie.',
  'open-failed':
    '{port} ließ sich nicht öffnen ({cause}); der Anschluss eines Kopfs öffnet sich jedem Programm, das ihn benutzen darf; ziehen Sie den Kopf ab, stecken Sie ihn wieder an und wählen Sie den Anschluss neu.',
  'no-reason': 'ohne Angabe von Gründen',
  disconnected:
    'Die Verbindung zu {port} ist abgerissen{asked}; nichts zuvor Gemessenes ist verloren; stecken Sie den Kopf wieder an, der Messplatz findet ihn an seiner Seriennummer.',
  'while-waiting': ', während auf {what} gewartet wurde',
  timeout:
    'Der Kopf hat auf {what} nicht innerhalb von {limit} geantwortet; wo es gefahrlos ist, wurde zweimal gefragt; prüfen Sie das Kabel und messen Sie noch einmal.',
  'a-question': 'eine Frage',
  'its-time': 'seiner Zeit',
  overlong:
    'Der Kopf hat mehr als {limit} Zeichen ohne Zeilenende geschickt; das ist Rauschen und keine Messung und wurde verworfen; prüfen Sie das Kabel und ob dies der Anschluss des Kopfs ist, dann messen Sie noch einmal.',
  crc: 'Eine Antwort des Kopfs kam beschädigt an (ihre Prüfsumme stimmt nicht) und wurde verworfen, auch beim zweiten Mal; nur unbeschädigte Antworten zählen; legen Sie das Kabel weg von Motoren und Lampennetzteilen, oder nehmen Sie ein kürzeres, dann messen Sie noch einmal.',
  'no-crc':
    'Der Kopf schickt keine Prüfsummen mehr, wie nach einem Neubeginn; die Antwort wurde verworfen; prüfen Sie seine Stromversorgung, messen Sie die Weißkachel neu, dann weiter.',
  frame:
    'Eine Antwort des Kopfs lässt sich nicht als Messung lesen ({seen}); sie wurde verworfen; messen Sie noch einmal, und bleibt es so, prüfen Sie das Kabel und die Firmware des Kopfs.',
  'wrong-shape': 'falsche Form',
  stale:
    'Der Kopf hat eine Messung geschickt, die schon genommen war; nur eine frische zählt, sie wurde also verworfen; messen Sie noch einmal.',
  sequence:
    'Die Messungen des Kopfs sind nicht fortlaufend nummeriert ({seen}); der Kopf hat neu begonnen, oder ein anderes Programm liest mit; schließen Sie das andere Programm, messen Sie die Weißkachel neu, dann weiter.',
  'number-missing': 'eine Nummer fehlt',
  'out-of-sync':
    'Der Kopf an {port} antwortet nicht mehr der Reihe nach; drei Versuche, ihn zurückzuholen, blieben vergeblich; ziehen Sie ihn ab, stecken Sie ihn wieder an, und er wird gefunden.',
  'no-answer':
    'Nichts an {port} hat innerhalb von {limit} als Kopf geantwortet{heard}; ein Kopf antwortet auf *IDN? mit vier Feldern, das erste TINTLADDER; wählen Sie einen anderen Anschluss, oder prüfen Sie die Firmware des Kopfs.',
  heard: ' (gehört: {what})',
  protocol:
    'Der Kopf spricht Version {version} des Zeilenprotokolls, dieses Programm {allowed}; erneuern Sie die Firmware des Kopfs oder dieses Programm, oder tippen Sie die Messungen inzwischen ein.',
  'other-head':
    'Ein anderer Kopf hat an {port} geantwortet ({seen}, erwartet war {wanted}); Weiß und Dunkelwert gehören zu einem Kopf; stecken Sie den ersten an, oder verbinden Sie mit diesem neu.',
  'unknown-serial': 'unbekannte Seriennummer',
  'one-before': 'der zuvor benutzte',
  settings:
    'Der Kopf hat seine Einstellung nicht angenommen oder nicht behalten ({seen}; verlangt: {wanted}); eine Messung mit anderer Einstellung als beim Weiß ist wertlos und wurde verworfen; stellen Sie ihn neu und messen Sie die Weißkachel neu.',
  'they-differ': 'sie weicht ab',
  'those-of-white': 'die der Weißkachel',
  hardware:
    'Der Sensor des Kopfs antwortet nicht ({seen}); eine Messung braucht ihn; prüfen Sie die Leitung zwischen Platine und Sensor, dann stecken Sie den Kopf neu an.',
  'hardware-error': 'Gerätefehler',
  refused:
    'Der Kopf hat {what} abgelehnt ({cause}); {allowed}; wählen Sie einen erlaubten Wert und stellen Sie noch einmal.',
  'a-command': 'einen Befehl',
  'own-documents': 'seine eigenen Unterlagen sagen, was er nimmt',
  unsupported:
    'Dieser Kopf kennt {what} nicht; das Protokoll lässt es offen; machen Sie ohne weiter, oder nehmen Sie einen Kopf, der es hat.',
  'that-command': 'diesen Befehl',
  'out-of-range':
    '{value} lässt sich nicht stellen; erlaubt: {allowed}; wählen Sie einen Wert in diesem Bereich.',
  'the-value': 'Der Wert',
  'see-the-head': 'siehe Kopf',
  'frame-number': 'Nummer der Messung „{seen}“',
  flags: 'Zeichen „{seen}“',
  'gain-field': 'Verstärkung „{seen}“',
  'aperture-field': 'Zeit „{seen}“',
  'lamp-field': 'Lampe „{seen}“',
  'lamp-flags': 'Lampe {lamp} mit den Zeichen {flags}',
  temperature: 'Temperatur „{seen}“',
  'count-of-counts': 'Zahl der Zählwerte „{seen}“, erwartet {wanted}',
  count: 'Zählwert „{seen}“',
  'two-of-one-name': 'zwei Kanäle eines Namens',
  'channels-answer': '„{seen}“ Kanäle, erlaubt 1 bis {most}',
  'catalogue-fields': 'ein Verzeichnis mit {seen} Feldern, erwartet {wanted}',
  'channel-name': 'Kanalname {seen}',
  metres: '{seen} m als Wellenlänge',
  'response-shape': 'eine Kanalempfindlichkeit falscher Form',
  'channel-catalogue': 'das Kanalverzeichnis',
  'its-condition': 'seinen Zustand',
  'after-crc': '„{seen}“ nach SYST:COMM:CRC 1',
  'its-geometry': 'seine Geometrie',
  'its-kind': 'seine Art',
  flood: 'eine Flut ohne Zeilenenden',
  'no-frame': 'keine Messung: keine Zahl',
  'frame-again': 'Messung {number} noch einmal',
  'frame-out-of-turn': 'Messung {number} außer der Reihe',
  'gain-aperture': 'Verstärkung {gain}, Zeit {seconds} s',
  'lamp-other-way': 'Lampe {lamp}, wo sie anders sein sollte',
  'in-analogue': 'in der analogen Stufe, vor dem Zählen',
  'channel-is': 'Kanal {channel} ist {count}',
  'its-settings': 'seine Einstellung',
  'five-settings': '„{seen}“ statt fünf Einstellungen',
  'what-may-be-set': 'was sich stellen lässt',
  gain: 'Verstärkung {gain}',
  aperture: 'Zeit {seconds} s',
  'one-to': '1 bis {most}',
  'from-to': '{low} bis {high} s',
  'in-place-of-entry': '„{seen}“ statt eines Fehlereintrags',
  'asked-while': '„{text}“ wurde gefragt, während „{pending}“ auf Antwort wartet.',
  'ports-too-long': 'Die Liste der Anschlüsse dauerte zu lange.',
  'opened-before': 'Der Zugang zu {port} war schon einmal offen; machen Sie einen neuen.',
  'not-closed': '{port} schloss sich nicht rechtzeitig.',
  'browser-port': 'serieller Anschluss des Browsers',
  'usb-port': 'USB-Anschluss {vendor}:{product}',
  ascii: 'An einen Kopf lässt sich nur ASCII schicken; gegeben wurde das Zeichen {code}.',
  'the-port-first': 'Der Anschluss',
  saturated:
    'Zu viel Licht in {channels}; jeder Kanal muss unter der Vollaussteuerung bleiben; stellen Sie Verstärkung oder Zeit kleiner, dann messen Sie vor der nächsten Messung die Weißkachel neu.',
  'saturated-seen':
    'Zu viel Licht in {channels} ({seen}); jeder Kanal muss unter der Vollaussteuerung bleiben; stellen Sie Verstärkung oder Zeit kleiner, dann messen Sie vor der nächsten Messung die Weißkachel neu.',
  allowed: 'erlaubt: {values}',
  averages: '{count} Mittelungen',
});
