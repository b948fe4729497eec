import type { FaultDetails, FaultKind } from './fault.ts';

type Sentence = (d: FaultDetails) => string;

const port = (d: FaultDetails): string => d.port ?? 'the port';
const seen = (d: FaultDetails, otherwise: string): string => d.seen ?? otherwise;
const list = (names: readonly string[] | undefined): string =>
  names?.length ? names.join(', ') : 'a channel';
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Every fault's sentence: what was seen, what is allowed, what to do next. */
export const FAULT_SENTENCES: Readonly<Record<FaultKind, Sentence>> = {
  'no-serial-support': (d) =>
    `Serial ports cannot be used on this computer (${seen(d, 'the port library did not load')}); everything else works; type readings in, import a file, or run npm ci again on this computer.`,
  permission: (d) =>
    `${capital(port(d))} may not be opened by this user; the serial ports belong to a group (dialout on most Linux systems, uucp on some); run "sudo usermod -aG dialout $USER", log out and in again, then connect.`,
  busy: (d) =>
    `${capital(port(d))} is in use by another program; one program at a time may hold a head; close the other one (a terminal, a second window, a modem manager) and connect again.`,
  waiting: (d) =>
    `${capital(port(d))} is in use by another program, such as a modem manager that looks at every new port; it is waited for up to ${d.allowed ?? '30 s'}; close the other program, or stop waiting.`,
  'busy-or-denied': (d) =>
    `${capital(port(d))} refused to open; most often another program holds it, sometimes the user has no right to it; close other programs that use serial ports and connect again.`,
  missing: (d) =>
    `There is no ${port(d)} now; a head shows up as a serial port a second or two after it is plugged in; check the cable, then choose the port again.`,
  'not-a-serial-port': (d) =>
    `${capital(port(d))} is not a serial port; ports look like /dev/ttyACM0, /dev/ttyUSB0, /dev/cu.usbmodem1 or COM5; choose one from the list.`,
  'open-timeout': (d) =>
    `${capital(port(d))} did not open within ${d.allowed ?? '3 s'}; a port opens at once when its device is well; unplug the head, plug it in again and connect.`,
  'open-failed': (d) =>
    `${capital(port(d))} could not be opened (${seen(d, 'no reason given')}); a head's port opens for any program that may use it; unplug the head, plug it in again and choose the port anew.`,
  disconnected: (d) =>
    `The connection to ${port(d)} was lost${d.asked ? ` while waiting for ${d.asked}` : ''}; nothing read before is lost; plug the head in again, the bench finds it by its serial number.`,
  timeout: (d) =>
    `The head did not answer ${d.asked ?? 'a question'} within ${d.allowed ?? 'its time'}; it was asked twice where that is safe; check the cable and read again.`,
  overlong: (d) =>
    `The head sent more than ${d.allowed ?? '4096'} characters without an end of line; that is noise, not a reading, and it was thrown away; check the cable and that this port is the head's, then read again.`,
  crc: () =>
    `An answer of the head came damaged (its checksum does not fit) and was thrown away, as was its repeat; only undamaged answers count; move the cable away from motors and lamp supplies, or use a shorter one, then read again.`,
  'no-crc': () =>
    `The head stopped sending checksums, which it does after a restart; the answer was thrown away; check its power, take the white tile again, then read.`,
  frame: (d) =>
    `An answer of the head cannot be read as a reading (${seen(d, 'wrong shape')}); it was thrown away; read again, and if it stays so, check the cable and the head's firmware.`,
  stale: () =>
    `The head sent a reading that was already taken; only a fresh one counts, so it was thrown away; read again.`,
  sequence: (d) =>
    `The head's readings are not numbered one after another (${seen(d, 'a number is missing')}); the head restarted or another program reads it too; close the other program, take the white tile again, then read.`,
  'out-of-sync': (d) =>
    `The head on ${port(d)} no longer answers in turn; three tries to bring it back failed; unplug it, plug it in again, and it will be found.`,
  'no-answer': (d) =>
    `Nothing on ${port(d)} answered as a head within ${d.allowed ?? '3 s'}${d.seen ? ` (heard ${d.seen})` : ''}; a head answers *IDN? with four fields beginning TINTLADDER; choose another port or check the head's firmware.`,
  protocol: (d) =>
    `The head speaks version ${seen(d, 'unknown')} of the line protocol; this program speaks ${d.allowed ?? '1.0'}; update the head's firmware or this program, or type the readings in meanwhile.`,
  'other-head': (d) =>
    `Another head answered on ${port(d)} (${seen(d, 'unknown serial number')}, wanted ${d.allowed ?? 'the one used before'}); white and dark belong to one head; plug the first one in, or connect anew with this one.`,
  settings: (d) =>
    `The head did not take or keep its settings (${seen(d, 'they differ')}; wanted ${d.allowed ?? 'those of the white tile'}); a reading with other settings than the white's is worthless and was thrown away; set them again and take the white tile anew.`,
  saturated: (d) =>
    `Too much light in ${list(d.channels)}${d.seen ? ` (${d.seen})` : ''}; every channel must stay below full scale; lower the gain or the aperture, then take the white tile anew before the next reading.`,
  hardware: (d) =>
    `The head's own sensor does not answer (${seen(d, 'hardware error')}); a reading needs it; check the wire between board and sensor, then unplug and plug in the head.`,
  refused: (d) =>
    `The head refused ${d.asked ?? 'a command'} (${seen(d, 'no reason given')}); ${d.allowed ? `allowed: ${d.allowed}` : 'its own documents say what it takes'}; choose an allowed value and set it again.`,
  unsupported: (d) =>
    `This head does not know ${d.asked ?? 'that command'}; it is optional in the protocol; go on without it, or use a head that has it.`,
  'out-of-range': (d) =>
    `${capital(seen(d, 'The value'))} cannot be set; allowed: ${d.allowed ?? 'see the head'}; choose a value in that range.`,
};
