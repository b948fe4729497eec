import type { Tube } from '../../../../server/api/tubes.ts';
import { num } from '../../text/numbers.ts';

/** What is written on a tube, as it stands in the fields. */
export type Draft = Record<
  'label' | 'pigments' | 'batch' | 'bought' | 'density' | 'note' | 'drying' | 'role' | 'practice',
  string
>;

export const BLANK: Draft = {
  label: '',
  pigments: '',
  batch: '',
  bought: '',
  density: '',
  note: '',
  drying: 'unknown',
  role: '',
  practice: '',
};

/** "PB29, PR 101 / PY42" as codes. Anything else on the label is kept as it was written. */
export function pigmentCodes(text: string): string[] {
  return text
    .replaceAll(/\b(P[A-Z]{1,2}|N[A-Z]{1,2})\s+(\d)/gi, '$1$2')
    .split(/[,;/+&\n]+|\s+(?=[PN][A-Z]{1,2}\d)/i)
    .map((code) => code.trim())
    .filter(Boolean)
    .map((code) => (/^[PN][A-Z]{1,2}\d/i.test(code) ? code.toUpperCase() : code));
}

export function draftOf(tube: Tube): Draft {
  return {
    label: tube.label,
    pigments: tube.pigments.join(' '),
    batch: tube.batch,
    bought: tube.bought ?? '',
    density: tube.density === null ? '' : num(tube.density, 2),
    note: tube.note,
    drying: tube.drying,
    role: tube.role ?? '',
    practice: tube.practicePaintId ?? '',
  };
}
