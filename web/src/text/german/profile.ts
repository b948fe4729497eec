import { PROFILE } from '../../../../src/profile/sentences.ts';
import { german } from './german.ts';

export const profileGerman = german(PROFILE, {
  'different-whites': 'Die Profile ruhen auf verschiedenen Weiß („{first}“ und „{second}“): {what}.',
  'same-name-whites':
    'Beide Profile nennen ihr Weiß „{white}“, und die beiden messen sich {apart} (CIEDE2000) auseinander, sind also nicht eine Farbe: {what}.',
  differs: '{of} unterscheidet sich um {deltaE} (CIEDE2000): {way}.',
  strength:
    'Sie ist {way}: {percent} % der Färbekraft der alten Tube (auf {sd} genau), nehmen Sie also {use} davon.',
  hiding: 'Sie deckt {way}: volles Decken braucht die {times}-fache Dicke.',
  'no-difference': 'Kein Unterschied ist größer als der Zweifel der beiden Messungen.',
  'stronger-in-colour': 'bunter',
  'shade-apart': 'eine Spur anders',
  'other-readings':
    'Die ersten Messungen sind {first} bei {firstGeometry}, die neuen {again} bei {againGeometry}: messen Sie noch einmal wie zuvor.',
  'too-few-reread':
    '{count} Muster wiedergemessen; drei werden gebraucht (das Weiß, eine Aufhellung, ein Vollton), um das Gerät von der Farbe zu unterscheiden.',
  holds: 'Die Palette hält: kein Muster ging über die Streuung seiner Messungen hinaus.',
  moved:
    '{some} von {of} Mustern gingen über die Streuung ihrer Messungen hinaus, am weitesten um {most} (CIEDE2000).',
  'same-way':
    'Alle gingen in der Helligkeit denselben Weg, was auf die Weißkachel oder das Gerät weist: reinigen Sie die Kachel, stellen Sie den Kopf und messen Sie noch einmal, bevor Sie etwas anderes tun.',
  yellowed:
    'Das Weiß und seine Aufhellungen sind gelblich geworden, wie es Ölweiß im Dunkeln wird: messen Sie das Weiß neu; Tageslicht nimmt einen Teil davon zurück.',
  'not-seen': 'Die Änderung sähe man nebeneinander nicht; messen Sie in einem halben Jahr wieder.',
  'read-again': 'Messen Sie die Leitern der gewanderten Tuben neu, bevor Sie neuen Rezepten trauen.',
  'what-to-measure':
    'hellen Sie eine starke dunkle Tube, etwa ein Schwarz, 1:4 mit jedem der beiden Weiß auf, messen Sie beide Aufhellungen und die Volltöne der dunklen Tube und beider Weiß in einer Sitzung, und geben Sie diesen Mustersatz als Brücke',
  'bridge-geometry':
    'Die Brücke wurde bei {bridge} gemessen und die Profile bei {profiles}; messen Sie sie mit der Geometrie der Profile.',
  'bridge-whites':
    'Eine Brücke enthält das Weiß des ersten Profils als ihr Weiß und das des zweiten als Tube „{second}“; dieser Satz hat {seen}. Nennen Sie das zweite Weiß, oder {what}.',
  'bridge-weak':
    'Die Brücke lässt das Verhältnis der beiden Weiß um {percent} % im Ungewissen, mehr als {allowed} %: {what}.',
  'bridge-words': 'Das zweite Weiß streut {percent} % so viel wie das erste, auf {sd} % genau.',
  'two-whites':
    'Die Profile ruhen auf zwei Weiß („{first}“ und „{second}“), und nichts sagt, wie viel jedes streut: {what}.',
  'bridge-joins':
    'Die Brücke verbindet „{first}“ und „{second}“ bei {at}, die Profile ruhen auf „{profileFirst}“ und „{profileSecond}“ bei {profileAt}: {what}.',
  'two-pigments':
    '„{tube}“ ist in einem Profil {first}, im anderen {second}: das sind zwei Tuben. Gleiche ids getrennt lassen oder die Pigmente richtig benennen.',
  'two-tubes':
    'Die zwei Anpassungen von „{tube}“ widersprechen sich um das {times}-fache ihres Zweifels: das sind zwei Tuben, oder eine wurde falsch gelesen. Gleiche ids getrennt lassen oder beide Leitern ansehen.',
  'read-as-spectra': 'als Spektren',
  'read-in-bands': 'in wenigen Bändern',
  'read-as-xyz': 'als XYZ',
  'read-somehow': 'mit einem nicht genannten Gerät',
  'fits-agree': 'sie stimmen innerhalb ihres Zweifels überein',
  'fits-disagree':
    'sie widersprechen sich um das {times}-fache ihres Zweifels, beide werden also um so viel mehr bezweifelt',
  combined: '„{tube}“ ist eine Tube, zweimal angepasst, gelesen {first} und {second}: {how}.',
  renamed: '„{was}“ des zweiten Profils heißt jetzt „{is}“.',
  'white-moved':
    'Das zweite Weiß misst sich in der Brücke um {deltaE} (CIEDE2000) anders als in seinem eigenen Profil; prüfen Sie, wie die Köpfe gestellt waren.',
  crowding:
    'In Mischungen mit dem zweiten Weiß gilt seine Streuung in der Mitte dessen, was sein Gedränge zulässt (auf {percent} % genau): nur ein Weiß eines Profils kann sich drängen.',
  'other-geometry':
    'Ein Profil wurde bei {first} gemessen, das andere bei {second}: messen Sie die neuen Tuben mit der alten Geometrie.',
  'short-geometry':
    'Die kurze Leiter wurde bei {short} gemessen, das Profil bei {profile}: messen Sie die neue Tube mit der alten Geometrie.',
  'short-which': 'Die kurze Leiter enthält {tubes}; nennen Sie die neue Tube.',
  'only-white': 'keine Tube außer dem Weiß',
  'a-tint': 'eine Aufhellung',
  'the-masstone': 'den Vollton',
  'short-lacks':
    'Der kurzen Leiter fehlt {missing} von „{tube}“; eine neue Tube braucht ihren Vollton und eine Aufhellung (1:4) mit dem Weiß des Profils.',
  'short-white':
    'Das Weiß der kurzen Leiter misst sich {deltaE} (CIEDE2000) vom Weiß des Profils: machen Sie die Aufhellung mit dem Weiß des Profils, oder vereinigen Sie über eine Brücke.',
  unlike:
    'Die neue Tube gleicht der alten nicht, ihre Konstanten ruhen also allein auf ihrer eigenen kurzen Leiter. Ziehen Sie eine volle Leiter auf, bevor Sie dunklen Mischungen trauen.',
  'share-of-old': 'die alte Tube trägt {percent} % des Ergebnisses',
  'much-like': 'Die neue Tube gleicht der alten sehr; {share}.',
  'usual-difference': 'Die neue Tube unterscheidet sich, wie es Tuben eines Pigments meist tun; {share}.',
  'no-tube-to-replace': 'Das Profil hat keine Tube „{id}“ zum Ersetzen; es hat {known}.',
  'new-white':
    'Jede Konstante bezieht sich auf das Weiß, ein neues Weiß kommt also durch eine Vereinigung über eine Brücke dazu: {what}.',
  'tube-there': 'Das Profil hat schon eine Tube „{id}“; geben Sie der neuen eine andere id.',
  'new-tube-columns':
    'Die neue Tube hat {count} gemeinsame Kovarianzspalten, das Profil {wanted}; passen Sie sie mit dem Weiß des Profils an.',
  'white-otherwise':
    'Das Weiß maß sich um {deltaE} (CIEDE2000) anders, als es im Profil steht; stellen Sie den Kopf und messen Sie es noch einmal, wenn das nicht sein Alter ist.',
  'short-fit-stopped': 'Die Anpassung der kurzen Leiter blieb stehen: {message}',
});
