import { aperturePlateDrawing } from './aperture-plate.ts';
import { planDrawing } from './plan.ts';
import { sectionDrawing } from './section.ts';
import type { Sheet } from './sheet.ts';
import { whiteAndTrapDrawing } from './white-and-trap.ts';
import { lampCircuitDrawing, wiringDrawing } from './wiring.ts';

/** Every sheet by the name of its file. */
export const DRAWINGS: Readonly<Record<string, () => Sheet>> = {
  section: sectionDrawing,
  plan: planDrawing,
  'aperture-plate': aperturePlateDrawing,
  'white-and-trap': whiteAndTrapDrawing,
  wiring: wiringDrawing,
  'lamp-circuit': lampCircuitDrawing,
};
