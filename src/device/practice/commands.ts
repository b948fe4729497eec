import { GRID_NM, GRID_STEP_NM } from '../../colour/grid.ts';
import { quote } from '../framing/fields.ts';
import { APERTURE, GAINS } from './exposure-settings.ts';
import type { PracticeInstrument } from './practice-instrument.ts';
import { booleanParameter, nr3, numberParameter, queuedError } from './scpi-words.ts';
import type { NumberRange } from './scpi-words.ts';

const FIRMWARE = '1.0.0';
const SETTLING = 1 << 1;
const MEASURING = 1 << 4;
const WAITING = 1 << 5;
const MASK: NumberRange = { min: 0, max: 65_535, default: 0 };

/** Fills the desk with the whole command table of hardware-notes/protocol.md. */
export function defineCommands(head: PracticeInstrument): void {
  defineCommon(head);
  defineSystem(head);
  defineChannels(head);
  defineSettings(head);
  defineFrames(head);
  defineStatus(head);
}

function defineCommon(head: PracticeInstrument): void {
  const { desk } = head;
  const masks: Record<string, number> = { ESE: 0, SRE: 0 };
  desk.query('*IDN?', () => `TINTLADDER,${head.sensor.model},${head.serial},${FIRMWARE}`);
  desk.set('*RST', () => head.reset());
  desk.set('*CLS', () => desk.clear());
  desk.query('*TST?', () => '0');
  desk.query('*OPC?', () => '1');
  desk.set('*OPC', () => {
    desk.eventRegister |= 1;
  });
  desk.set('*WAI', () => {});
  desk.query('*ESR?', () => {
    const register = desk.eventRegister;
    desk.eventRegister = 0;
    return String(register);
  });
  desk.query('*STB?', () => String(desk.errorCount > 0 ? 4 : 0));
  for (const mask of ['ESE', 'SRE']) {
    desk.set(`*${mask}`, ([n]) => {
      masks[mask] = numberParameter(n, MASK);
    });
    desk.query(`*${mask}?`, () => String(masks[mask]));
  }
}

function defineSystem(head: PracticeInstrument): void {
  const { desk } = head;
  desk.query('SYSTem:ERRor[:NEXT]?', () => desk.nextError());
  desk.query('SYSTem:ERRor:COUNt?', () => String(desk.errorCount));
  desk.query('SYSTem:VERSion?', () => '1999.0');
  desk.query('SYSTem:PROTocol:VERSion?', () => '1.1');
  if (!head.checksums) return;
  desk.set('SYSTem:COMMunicate:CRC', ([on]) => {
    desk.checksum = booleanParameter(on);
  });
  desk.query('SYSTem:COMMunicate:CRC?', () => (desk.checksum ? '1' : '0'));
}

function defineChannels({ desk, sensor }: PracticeInstrument): void {
  const { channels } = sensor;
  const whole = { min: 1, max: channels.length, default: 1 };
  const metres = (nm: number | undefined): string => (nm === undefined ? '9.91E37' : nr3(nm * 1e-9));
  desk.query('SENSe:FUNCtion?', () => quote(sensor.scpiKind));
  desk.query('SENSe:GEOMetry?', () => quote('45/0'));
  desk.query('SENSe:CHANnel:COUNt?', () => String(channels.length));
  desk.query('SENSe:CHANnel:CATalog?', ([first, count]) => {
    const from = first === undefined ? 1 : numberParameter(first, whole);
    const many = first === undefined ? channels.length : numberParameter(count, whole);
    const listed = channels.slice(from - 1, from - 1 + many);
    return listed.map((c) => `${quote(c.name)},${metres(c.centreNm)},${metres(c.fwhmNm)}`).join(',');
  });
  desk.query('SENSe:CHANnel:RESPonse?', ([index]) => {
    const channel = channels[numberParameter(index, whole) - 1];
    if (!channel) throw queuedError(-222);
    const values = [...channel.response].map((value) => nr3(value));
    return [metres(GRID_NM[0]), metres(GRID_STEP_NM), values.length, ...values].join(',');
  });
}

function defineSettings({ desk, settings, sensor }: PracticeInstrument): void {
  const gains = { min: GAINS[0] ?? 1, max: GAINS.at(-1) ?? 1, default: 64 };
  const averages = { min: 1, max: 64, default: 1 };
  desk.set('INPut:GAIN', ([x]) => {
    const gain = numberParameter(x, gains);
    if (!GAINS.includes(gain)) throw queuedError(-222);
    settings.gain = gain;
  });
  desk.query('INPut:GAIN?', ([end]) =>
    String(end === undefined ? settings.gain : numberParameter(end, gains)),
  );
  desk.query('INPut:GAIN:CATalog?', () => GAINS.join(','));
  desk.set('SENSe:APERture', ([s]) => settings.setAperture(numberParameter(s, APERTURE)));
  desk.query('SENSe:APERture?', ([end]) =>
    nr3(end === undefined ? settings.apertureS : numberParameter(end, APERTURE)),
  );
  desk.set('SENSe:AVERage:COUNt', ([n]) => {
    const count = numberParameter(n, averages);
    if (!Number.isInteger(count)) throw queuedError(-224);
    settings.averages = count;
  });
  desk.query('SENSe:AVERage:COUNt?', () => String(settings.averages));
  desk.query('SENSe:RANGe[:UPPer]?', () => String(settings.fullScale));
  desk.query('SENSe:PASSes?', () => String(sensor.passes));
  desk.set('OUTPut[:STATe]', ([on]) => {
    settings.lampStays = booleanParameter(on);
  });
  desk.query('OUTPut[:STATe]?', () => (settings.lampStays ? '1' : '0'));
  desk.set('CONFigure:COUNts', () => {});
}

function defineFrames(head: PracticeInstrument): void {
  const { desk, settings, sensor } = head;
  desk.set('TRIGger[:SEQuence]:SOURce', ([source]) => {
    if (source === undefined) throw queuedError(-109);
    if (!/^(IMM(EDIATE)?|EXT(ERNAL)?)$/i.test(source)) throw queuedError(-224);
    settings.buttonTriggers = /^EXT/i.test(source);
  });
  desk.query('TRIGger[:SEQuence]:SOURce?', () => (settings.buttonTriggers ? 'EXT' : 'IMM'));
  desk.query('TRIGger[:SEQuence]:COUNt?', () => String(head.presses));
  desk.set('INITiate[:IMMediate]', async () => {
    if (head.waitingForButton) throw queuedError(-213);
    head.lastFrame = undefined;
    if (settings.buttonTriggers) head.awaitButton();
    else await head.takeFrame(true);
  });
  desk.set('ABORt', () => {
    head.waitingForButton = false;
  });
  desk.query('FETCh?', () => {
    if (head.lastFrame !== undefined) return head.lastFrame;
    desk.queue(queuedError(-230));
    return '9.91E37';
  });
  desk.query('SENSe:FRAMe?', () => String(head.frameNumber));
  desk.query('READ?', () => head.takeFrame(true));
  desk.query('MEASure:COUNts?', () => head.takeFrame(true));
  desk.query('READ:DARK?', () => head.takeFrame(false));
  desk.query('MEASure:TEMPerature?', () => nr3(head.kelvin()));
  if (sensor.scpiKind === 'XYZ') {
    desk.query('MEASure:XYZ?', async () => `${(await head.factoryXyz()).map(nr3).join(',')},10,"D65"`);
  }
}

function defineStatus(head: PracticeInstrument): void {
  const { desk } = head;
  const operation = (): number =>
    (head.settling ? SETTLING : 0) | (head.measuring ? MEASURING : 0) | (head.waitingForButton ? WAITING : 0);
  for (const [node, condition] of [
    ['OPERation', operation],
    ['QUEStionable', () => 0],
  ] as const) {
    let enabled = 0;
    desk.query(`STATus:${node}[:EVENt]?`, () => String(condition()));
    desk.query(`STATus:${node}:CONDition?`, () => String(condition()));
    desk.set(`STATus:${node}:ENABle`, ([n]) => {
      enabled = numberParameter(n, MASK);
    });
    desk.query(`STATus:${node}:ENABle?`, () => String(enabled));
  }
  desk.set('STATus:PRESet', () => {});
}
