/** What can go wrong between the program and a head: what was seen, what is allowed, what to do next. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const DEVICE = catalogue('device', {
  'the-port': 'the port',
  'a-channel': 'a channel',
  'no-serial-support':
    'Serial ports cannot be used on this computer ({cause:said}); everything else works; type readings in, import a file, or run npm ci again on this computer.',
  'no-library': 'the port library did not load',
  permission:
    '{port:said} may not be opened by this user; the serial ports belong to a group (dialout on most Linux systems, uucp on some); run "sudo usermod -aG dialout $USER", log out and in again, then connect.',
  busy: '{port:said} is in use by another program; one program at a time may hold a head; close the other one (a terminal, a second window, a modem manager) and connect again.',
  waiting:
    '{port:said} is in use by another program, such as a modem manager that looks at every new port; it is waited for up to {limit:figure}; close the other program, or stop waiting.',
  'busy-or-denied':
    '{port:said} refused to open; most often another program holds it, sometimes the user has no right to it; close other programs that use serial ports and connect again.',
  missing:
    'There is no {port:said} now; a head shows up as a serial port a second or two after it is plugged in; check the cable, then choose the port again.',
  'not-a-serial-port':
    '{port:said} is not a serial port; ports look like /dev/ttyACM0, /dev/ttyUSB0, /dev/cu.usbmodem1 or COM5; choose one from the list.',
  'open-timeout':
    '{port:said} did not open within {limit:figure}; a port opens at once when its device is well; unplug the head, plug it in again and connect.',
  'open-failed':
    "{port:said} could not be opened ({cause:said}); a head's port opens for any program that may use it; unplug the head, plug it in again and choose the port anew.",
  'no-reason': 'no reason given',
  disconnected:
    'The connection to {port:said} was lost{asked:said}; nothing read before is lost; plug the head in again, the bench finds it by its serial number.',
  'while-waiting': ' while waiting for {what:said}',
  timeout:
    'The head did not answer {what:said} within {limit:said}; it was asked twice where that is safe; check the cable and read again.',
  'a-question': 'a question',
  'its-time': 'its time',
  overlong:
    "The head sent more than {limit} characters without an end of line; that is noise, not a reading, and it was thrown away; check the cable and that this port is the head's, then read again.",
  crc: 'An answer of the head came damaged (its checksum does not fit) and was thrown away, as was its repeat; only undamaged answers count; move the cable away from motors and lamp supplies, or use a shorter one, then read again.',
  'no-crc':
    'The head stopped sending checksums, which it does after a restart; the answer was thrown away; check its power, take the white tile again, then read.',
  frame:
    "An answer of the head cannot be read as a reading ({seen:said}); it was thrown away; read again, and if it stays so, check the cable and the head's firmware.",
  'wrong-shape': 'wrong shape',
  stale:
    'The head sent a reading that was already taken; only a fresh one counts, so it was thrown away; read again.',
  sequence:
    "The head's readings are not numbered one after another ({seen:said}); the head restarted or another program reads it too; close the other program, take the white tile again, then read.",
  'number-missing': 'a number is missing',
  'out-of-sync':
    'The head on {port:said} no longer answers in turn; three tries to bring it back failed; unplug it, plug it in again, and it will be found.',
  'no-answer':
    "Nothing on {port:said} answered as a head within {limit:figure}{heard:said}; a head answers *IDN? with four fields beginning TINTLADDER; choose another port or check the head's firmware.",
  heard: ' (heard {what:said})',
  protocol:
    "The head speaks version {version} of the line protocol; this program speaks {allowed}; update the head's firmware or this program, or type the readings in meanwhile.",
  'other-head':
    'Another head answered on {port:said} ({seen:said}, wanted {wanted:said}); white and dark belong to one head; plug the first one in, or connect anew with this one.',
  'unknown-serial': 'unknown serial number',
  'one-before': 'the one used before',
  settings:
    "The head did not take or keep its settings ({seen:said}; wanted {wanted:said}); a reading with other settings than the white's is worthless and was thrown away; set them again and take the white tile anew.",
  'they-differ': 'they differ',
  'those-of-white': 'those of the white tile',
  hardware:
    "The head's own sensor does not answer ({seen:said}); a reading needs it; check the wire between board and sensor, then unplug and plug in the head.",
  'hardware-error': 'hardware error',
  refused:
    'The head refused {what:said} ({cause:said}); {allowed:said}; choose an allowed value and set it again.',
  'a-command': 'a command',
  'own-documents': 'its own documents say what it takes',
  unsupported:
    'This head does not know {what:said}; it is optional in the protocol; go on without it, or use a head that has it.',
  'that-command': 'that command',
  'out-of-range': '{value:said} cannot be set; allowed: {allowed:said}; choose a value in that range.',
  'the-value': 'The value',
  'see-the-head': 'see the head',
  'frame-number': 'frame number "{seen}"',
  flags: 'flags "{seen}"',
  'gain-field': 'gain "{seen}"',
  'aperture-field': 'aperture "{seen}"',
  'lamp-field': 'lamp "{seen}"',
  'lamp-flags': 'lamp {lamp} with flags {flags}',
  temperature: 'temperature "{seen}"',
  'count-of-counts': 'count of counts "{seen}", {wanted} wanted',
  count: 'count "{seen}"',
  'two-of-one-name': 'two channels of one name',
  'channels-answer': '"{seen}" channels, 1 to {most} allowed',
  'catalogue-fields': 'a catalogue of {seen:said} fields, {wanted} wanted',
  'channel-name': 'channel name {seen}',
  metres: '{seen} m as a wavelength',
  'response-shape': 'a channel response of the wrong shape',
  'channel-catalogue': 'the channel catalogue',
  'its-condition': 'its condition',
  'after-crc': '"{seen}" after SYST:COMM:CRC 1',
  'its-geometry': 'its geometry',
  'its-kind': 'its kind',
  flood: 'a flood without line ends',
  'no-frame': 'no frame: not a number',
  'frame-again': 'frame {number} again',
  'frame-out-of-turn': 'frame {number} out of turn',
  'gain-aperture': 'gain {gain:figure}, aperture {seconds:figure} s',
  'lamp-other-way': 'lamp {lamp:word} where it should be the other way',
  'in-analogue': 'in the analogue stage, before the count',
  'channel-is': 'channel {channel} is {count:said}',
  'its-settings': 'its settings',
  'five-settings': '"{seen}" in place of five settings',
  'what-may-be-set': 'what may be set',
  gain: 'gain {gain:figure}',
  aperture: 'aperture {seconds:figure} s',
  'one-to': '1 to {most}',
  'from-to': '{low:figure} to {high:figure} s',
  'in-place-of-entry': '"{seen}" in place of an error queue entry',
  'asked-while': '"{text}" was asked while "{pending}" waits for its answer.',
  'ports-too-long': 'The list of ports took too long.',
  'opened-before': 'The transport on {port:said} was opened before; make a new one.',
  'not-closed': '{port:said} did not close in time.',
  'browser-port': 'browser serial port',
  'usb-port': 'USB port {vendor}:{product}',
  ascii: 'Only ASCII can be sent to a head; character {code} was given.',
  'the-port-first': 'The port',
  saturated:
    'Too much light in {channels}; every channel must stay below full scale; lower the gain or the aperture, then take the white tile anew before the next reading.',
  'saturated-seen':
    'Too much light in {channels} ({seen:said}); every channel must stay below full scale; lower the gain or the aperture, then take the white tile anew before the next reading.',
  allowed: 'allowed: {values:said}',
  averages: '{count:figure} averages',
});
export const say: Say<typeof DEVICE.templates> = DEVICE.say;
