import { Sheet } from './sheet.ts';
import type { Point } from './sheet.ts';

interface Pin {
  readonly name: string;
  readonly at: Point;
}

/** A board as a box with named pins on its left or right side. */
function board(sheet: Sheet, title: string, o: Point, width: number, pins: readonly [string, 'left' | 'right', number][]): Map<string, Pin> {
  const height = Math.max(...pins.map(([, , row]) => row)) * 8 + 14;
  sheet.box(o, width, height, '#ecfdf5');
  sheet.text({ x: o.x + width / 2, y: o.y - 2 }, title, { anchor: 'middle', weight: 'bold' });
  const found = new Map<string, Pin>();
  for (const [name, side, row] of pins) {
    const y = o.y + 8 + row * 8;
    const x = side === 'left' ? o.x : o.x + width;
    sheet.circle({ x, y }, 0.9, 'thin', '#111');
    sheet.text({ x: side === 'left' ? x + 2.5 : x - 2.5, y: y + 1.1 }, name, { anchor: side === 'left' ? 'start' : 'end' });
    found.set(name, { name, at: { x, y } });
  }
  return found;
}

const pin = (pins: Map<string, Pin>, name: string): Point => pins.get(name)!.at;

function wire(sheet: Sheet, a: Point, b: Point, via: number, label?: string): void {
  sheet.line('wire', a, { x: via, y: a.y }, { x: via, y: b.y }, b);
  if (label) sheet.text({ x: (a.x + via) / 2, y: a.y - 1 }, label, { anchor: 'middle', size: 2.6 });
}

function resistor(sheet: Sheet, o: Point, upright: boolean, label: string, side: 'left' | 'right' = 'right'): void {
  if (upright) sheet.box({ x: o.x - 1.5, y: o.y }, 3, 8, '#fff', 'wire');
  else sheet.box({ x: o.x, y: o.y - 1.5 }, 8, 3, '#fff', 'wire');
  if (!upright) sheet.text({ x: o.x + 4, y: o.y - 2.4 }, label, { size: 2.7, anchor: 'middle' });
  else sheet.text({ x: o.x + (side === 'right' ? 2.5 : -2.5), y: o.y + 5 }, label, { size: 2.7, anchor: side === 'right' ? 'start' : 'end' });
}

const ground = (sheet: Sheet, p: Point): void => {
  for (const [w, d] of [
    [2.5, 0],
    [1.6, 1],
    [0.7, 2],
  ] as const)
    sheet.line('wire', { x: p.x - w, y: p.y + d }, { x: p.x + w, y: p.y + d });
};
const supply = (sheet: Sheet, p: Point): void => {
  sheet.line('wire', { x: p.x, y: p.y }, { x: p.x, y: p.y - 3 });
  sheet.line('wire', { x: p.x - 2, y: p.y - 3 }, { x: p.x + 2, y: p.y - 3 });
  sheet.text({ x: p.x, y: p.y - 4 }, '5 V', { anchor: 'middle', size: 2.7 });
};

/** Which wire goes where. */
export function wiringDrawing(): Sheet {
  const sheet = new Sheet('Wiring', 'Controller board of the ATmega328P type, 5 V, 16 MHz (Uno- or Nano-shaped); labels as printed on such boards.');
  const mcu = board(sheet, 'ATmega328P board', { x: 112, y: 46 }, 62, [
    ['A4  SDA', 'left', 0],
    ['A5  SCL', 'left', 1],
    ['5V', 'left', 2],
    ['GND', 'left', 3],
    ['D2  button', 'left', 6],
    ['A0  thermistor', 'left', 9],
    ['D9  lamp enable', 'right', 0],
    ['A1  lamp sense', 'right', 1],
    ['5V ', 'right', 2],
    ['GND ', 'right', 3],
    ['USB (its own bridge, D0 D1)', 'right', 8],
  ]);
  const sensor = board(sheet, 'sensor board, AS7341 class', { x: 22, y: 46 }, 52, [
    ['SDA', 'right', 0],
    ['SCL', 'right', 1],
    ['VIN', 'right', 2],
    ['GND', 'right', 3],
  ]);
  const lamp = board(sheet, 'lamp board (sheet "Lamp circuit")', { x: 216, y: 46 }, 58, [
    ['ENABLE', 'left', 0],
    ['SENSE', 'left', 1],
    ['5 V', 'left', 2],
    ['GND', 'left', 3],
    ['group A: 3 lamps', 'right', 1],
    ['group B: 3 lamps', 'right', 2],
  ]);
  const straight = (from: Point, to: Point, label: string): void => wire(sheet, from, to, (from.x + to.x) / 2, label);
  straight(pin(sensor, 'SDA'), pin(mcu, 'A4  SDA'), '');
  straight(pin(sensor, 'SCL'), pin(mcu, 'A5  SCL'), '');
  straight(pin(sensor, 'VIN'), pin(mcu, '5V'), '');
  straight(pin(sensor, 'GND'), pin(mcu, 'GND'), '');
  straight(pin(mcu, 'D9  lamp enable'), pin(lamp, 'ENABLE'), '');
  straight(pin(mcu, 'A1  lamp sense'), pin(lamp, 'SENSE'), '');
  straight(pin(mcu, '5V '), pin(lamp, '5 V'), '');
  straight(pin(mcu, 'GND '), pin(lamp, 'GND'), '');

  const button = pin(mcu, 'D2  button');
  sheet.line('wire', button, { x: 88, y: button.y });
  sheet.circle({ x: 87.2, y: button.y }, 0.8, 'wire');
  sheet.circle({ x: 79.8, y: button.y }, 0.8, 'wire');
  sheet.line('wire', { x: 79.5, y: button.y - 2.6 }, { x: 87.5, y: button.y - 2.6 });
  sheet.line('wire', { x: 83.5, y: button.y - 2.6 }, { x: 83.5, y: button.y - 5 });
  sheet.line('wire', { x: 79, y: button.y }, { x: 70, y: button.y }, { x: 70, y: button.y + 3 });
  ground(sheet, { x: 70, y: button.y + 3 });
  sheet.text({ x: 66, y: button.y - 2 }, 'push button', { anchor: 'end' });

  const thermistor = pin(mcu, 'A0  thermistor');
  sheet.line('wire', thermistor, { x: 90, y: thermistor.y });
  sheet.circle({ x: 90, y: thermistor.y }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: 90, y: thermistor.y }, { x: 90, y: thermistor.y - 3 });
  resistor(sheet, { x: 90, y: thermistor.y - 11 }, true, '10 k, 1 %', 'left');
  supply(sheet, { x: 90, y: thermistor.y - 11 });
  sheet.line('wire', { x: 90, y: thermistor.y }, { x: 90, y: thermistor.y + 4 });
  resistor(sheet, { x: 90, y: thermistor.y + 4 }, true, 'thermistor 10 k, B 3950,', 'left');
  sheet.text({ x: 87.5, y: thermistor.y + 12.5 }, 'glued beside a lamp board', { anchor: 'end', size: 2.7 });
  sheet.line('wire', { x: 90, y: thermistor.y + 12 }, { x: 90, y: thermistor.y + 15 });
  ground(sheet, { x: 90, y: thermistor.y + 15 });

  sheet.lines({ x: 180, y: 118 }, [
    'The sensor board must bring its own 1.8 V regulator, level shifters for a',
    '5 V bus and pull-ups (most of the class do: read its sheet). If it takes',
    '3.3 V only, feed VIN from 3V3 and put a two-channel level shifter between.',
    '',
    'Sensor cable: 4 wires, at most 15 cm, SDA and SCL each twisted with GND.',
    'Power: from the USB port only. No second supply, no mains adaptor.',
    'Close no jumper that switches on a lamp of the sensor board itself: it',
    'sits beside the chip and would see the gloss.',
  ]);
  sheet.lines({ x: 22, y: 178 }, ['Firmware pins: hardware-notes/firmware/targets/atmega328p/board.h']);
  return sheet;
}

/** One of the two current sinks. */
function sink(sheet: Sheet, o: Point, group: string): void {
  // Op-amp, transistor, sense resistor; lamps above.
  sheet.shape([{ x: o.x, y: o.y - 8 }, { x: o.x, y: o.y + 8 }, { x: o.x + 14, y: o.y }], '#fff', 'wire');
  sheet.text({ x: o.x + 1.5, y: o.y - 3 }, '+', { size: 4 });
  sheet.text({ x: o.x + 1.8, y: o.y + 5.6 }, '-', { size: 4 });
  sheet.line('wire', { x: o.x + 14, y: o.y }, { x: o.x + 16, y: o.y });
  resistor(sheet, { x: o.x + 16, y: o.y }, false, '100');
  sheet.line('wire', { x: o.x + 24, y: o.y }, { x: o.x + 30, y: o.y });
  // transistor
  sheet.circle({ x: o.x + 33, y: o.y }, 5, 'thin');
  sheet.line('wire', { x: o.x + 30, y: o.y - 3 }, { x: o.x + 30, y: o.y + 3 });
  sheet.line('wire', { x: o.x + 31.2, y: o.y - 3 }, { x: o.x + 31.2, y: o.y + 3 });
  sheet.line('wire', { x: o.x + 31.2, y: o.y - 2.4 }, { x: o.x + 35, y: o.y - 2.4 }, { x: o.x + 35, y: o.y - 12 });
  sheet.line('wire', { x: o.x + 31.2, y: o.y + 2.4 }, { x: o.x + 35, y: o.y + 2.4 }, { x: o.x + 35, y: o.y + 12 });
  sheet.text({ x: o.x + 39.5, y: o.y + 1 }, 'N-MOSFET, logic level', { size: 2.7 });
  resistor(sheet, { x: o.x + 35, y: o.y + 12 }, true, '10, 0.1 %, 25 ppm/K');
  sheet.line('wire', { x: o.x + 35, y: o.y + 20 }, { x: o.x + 35, y: o.y + 23 });
  ground(sheet, { x: o.x + 35, y: o.y + 23 });
  // feedback
  sheet.circle({ x: o.x + 35, y: o.y + 10 }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: o.x + 35, y: o.y + 10 }, { x: o.x + 12, y: o.y + 10 });
  resistor(sheet, { x: o.x + 4, y: o.y + 10 }, false, '1 k');
  sheet.line('wire', { x: o.x + 4, y: o.y + 10 }, { x: o.x - 4, y: o.y + 10 }, { x: o.x - 4, y: o.y + 4.5 }, { x: o.x, y: o.y + 4.5 });
  // capacitor from output to inverting input
  sheet.line('wire', { x: o.x + 15, y: o.y }, { x: o.x + 15, y: o.y + 15 }, { x: o.x + 7, y: o.y + 15 });
  sheet.line('wire', { x: o.x + 7, y: o.y + 12.8 }, { x: o.x + 7, y: o.y + 17.2 });
  sheet.line('wire', { x: o.x + 5.8, y: o.y + 12.8 }, { x: o.x + 5.8, y: o.y + 17.2 });
  sheet.line('wire', { x: o.x + 5.8, y: o.y + 15 }, { x: o.x - 4, y: o.y + 15 }, { x: o.x - 4, y: o.y + 10 });
  sheet.text({ x: o.x + 6.4, y: o.y + 20.4 }, '1 nF', { size: 2.7, anchor: 'middle' });
  // lamps
  const top = o.y - 12;
  sheet.circle({ x: o.x + 35, y: top }, 0.7, 'thin', '#111');
  for (let i = 0; i < 3; i++) {
    const x = o.x + 25 + i * 10;
    sheet.line('wire', { x: o.x + 35, y: top }, { x, y: top }, { x, y: top - 2 });
    resistor(sheet, { x, y: top - 10 }, true, i === 2 ? '22 each' : '');
    sheet.line('wire', { x, y: top - 10 }, { x, y: top - 12 });
    sheet.shape([{ x: x - 2, y: top - 16 }, { x: x + 2, y: top - 16 }, { x, y: top - 12.5 }], '#fde68a', 'wire');
    sheet.line('wire', { x: x - 2, y: top - 12.3 }, { x: x + 2, y: top - 12.3 });
    sheet.line('wire', { x, y: top - 16 }, { x, y: top - 18 });
  }
  sheet.line('wire', { x: o.x + 25, y: top - 18 }, { x: o.x + 45, y: top - 18 });
  // jumper
  sheet.line('wire', { x: o.x + 35, y: top - 18 }, { x: o.x + 35, y: top - 20 });
  sheet.box({ x: o.x + 33.5, y: top - 25 }, 3, 5, '#e2e8f0', 'wire');
  sheet.text({ x: o.x + 38, y: top - 21.5 }, `jumper ${group}`, { size: 2.7 });
  supply(sheet, { x: o.x + 35, y: top - 25 });
  sheet.text({ x: o.x + 49, y: top - 13 }, `group ${group}: 3 lamps`, { size: 2.9, weight: 'bold' });
}

/** The constant-current lamp board. */
export function lampCircuitDrawing(): Sheet {
  const sheet = new Sheet('Lamp circuit', 'Two constant-current sinks of about 21 mA, on and off together; steady current, no pulse-width dimming. Ohms unless marked.');
  const [a, b] = [
    { x: 96, y: 86 },
    { x: 198, y: 86 },
  ];
  sink(sheet, a, 'A');
  sink(sheet, b, 'B');
  // enable and reference
  const y = a.y - 4;
  sheet.text({ x: 14, y: y + 1 }, 'ENABLE (D9)', { weight: 'bold' });
  sheet.line('wire', { x: 36, y }, { x: 40, y });
  resistor(sheet, { x: 40, y }, false, '470');
  sheet.line('wire', { x: 48, y }, { x: 60, y });
  sheet.circle({ x: 54, y }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: 54, y }, { x: 54, y: y + 6 });
  sheet.shape([{ x: 51.5, y: y + 11 }, { x: 56.5, y: y + 11 }, { x: 54, y: y + 6.4 }], '#fff', 'wire');
  sheet.line('wire', { x: 51, y: y + 7.4 }, { x: 51.8, y: y + 6.4 }, { x: 56.2, y: y + 6.4 }, { x: 57, y: y + 5.4 });
  sheet.line('wire', { x: 54, y: y + 11 }, { x: 54, y: y + 16 });
  ground(sheet, { x: 54, y: y + 16 });
  sheet.text({ x: 48, y: y + 24 }, '2.5 V shunt reference,', { size: 2.7, anchor: 'middle' });
  sheet.text({ x: 48, y: y + 28 }, '50 ppm/K or better', { size: 2.7, anchor: 'middle' });
  resistor(sheet, { x: 60, y }, false, '22 k, 0.1 %');
  sheet.line('wire', { x: 68, y }, { x: a.x, y });
  sheet.circle({ x: 76, y }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: 76, y }, { x: 76, y: y + 4 });
  resistor(sheet, { x: 76, y: y + 4 }, true, '2 k, 0.1 %', 'left');
  sheet.line('wire', { x: 76, y: y + 12 }, { x: 76, y: y + 15 });
  ground(sheet, { x: 76, y: y + 15 });
  sheet.text({ x: 78, y: y - 2 }, '0.208 V', { size: 2.7 });
  // to B
  sheet.circle({ x: 88, y }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: 88, y }, { x: 88, y: 128 }, { x: 186, y: 128 }, { x: 186, y: b.y - 4 }, { x: b.x, y: b.y - 4 });
  // sense
  const sense = 140;
  const tap = (o: Point, x: number): void => {
    sheet.line('wire', { x: o.x + 28, y: o.y + 10 }, { x: o.x + 28, y: sense }, { x, y: sense });
    sheet.circle({ x: o.x + 28, y: o.y + 10 }, 0.7, 'thin', '#111');
  };
  tap(a, 142);
  resistor(sheet, { x: 142, y: sense }, false, '10 k');
  sheet.line('wire', { x: 150, y: sense }, { x: 176, y: sense });
  resistor(sheet, { x: 176, y: sense }, false, '10 k');
  tap(b, 184);
  sheet.circle({ x: 163, y: sense }, 0.7, 'thin', '#111');
  sheet.line('wire', { x: 163, y: sense }, { x: 163, y: 150 });
  sheet.text({ x: 163, y: 154 }, 'SENSE (A1)', { weight: 'bold', anchor: 'middle' });
  sheet.lines({ x: 14, y: 164 }, [
    'Op-amp: dual, zero-drift, rail-to-rail in and out, for 5 V; offset 50 uV or less, so that off is dark. 100 nF at its supply, 10 uF at the 5 V inlet.',
    'Current 0.208 V / 10 ohm = 20.8 mA a group, 6.9 mA a lamp; a lamp may drop 4.2 V at most. 42 mA in all: well within a USB port.',
    'SENSE is the mean of both: 43 counts of the 10-bit converter with both groups, 21 with one, and the firmware takes no light frame below 10.',
    'Jumper A off: group B alone; jumper B off: group A alone; both on: the head as used. A + B against both together tests the linearity.',
    'Lamps: violet-pumped "full spectrum" white LEDs of one reel (data in parts.md); keep the type with the readings.',
  ], 3);
  return sheet;
}
