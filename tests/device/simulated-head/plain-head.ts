import type { Pair } from './simulated-head.ts';

export const SETTINGS = 'INP:GAIN?;:SENS:APER?;:SENS:AVER:COUN?;:SENS:PASS?;:SENS:RANG?';

/** A two-channel head without checksums and without responses, up to the point where it is ready. */
export function plainHead(protocol: string): readonly Pair[] {
  return [
    ['*IDN?', 'TINTLADDER,HEAD-2,SN0042,0.1.0'],
    ['*CLS', null],
    ['SYST:PROT:VERS?', protocol],
    ['SYST:COMM:CRC 1;:SYST:ERR?;:SYST:COMM:CRC?', '-113,"Undefined header"'],
    ['*CLS', null],
    ['SENS:FUNC?', '"BAND"'],
    ['SENS:GEOM?', '"45/0"'],
    ['SENS:CHAN:COUN?', '2'],
    ['SENS:CHAN:CAT?', '"blue",4.50E-7,3.0E-8,"clear",9.91E37,9.91E37'],
    ['SENS:CHAN:RESP? 1;:SYST:ERR:COUN?', '1'],
    ['SYST:ERR?', '-113,"Undefined header"'],
    ['SYST:ERR?', '0,"No error"'],
    ['INP:GAIN:CAT?', '1,4,16,64'],
    ['SENS:APER? MIN;:SENS:APER? MAX', '2.4E-3;6.14E-1'],
    [SETTINGS, '16;1.0000E-2;1;1;65535'],
  ];
}
