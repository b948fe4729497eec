import type { PaletteProfile } from './schema.ts';

/**
 * A profile as JSON text: members in a fixed order, one line per array of numbers, ending in a line feed.
 * Numbers are written with the shortest digits that read back to the same double, so nothing is rounded.
 */
export function writeProfile(profile: PaletteProfile): string {
  return `${render(profile, '')}\n`;
}

function render(value: unknown, indent: string): string {
  if (Array.isArray(value)) {
    if (value.every((v) => typeof v !== 'object' || v === null)) return JSON.stringify(value);
    const inner = `${indent}  `;
    return `[\n${value.map((v) => inner + render(v, inner)).join(',\n')}\n${indent}]`;
  }
  if (typeof value === 'object' && value !== null) {
    const inner = `${indent}  `;
    const members = Object.entries(value).filter(([, v]) => v !== undefined);
    if (members.length === 0) return '{}';
    return `{\n${members.map(([k, v]) => `${inner}${JSON.stringify(k)}: ${render(v, inner)}`).join(',\n')}\n${indent}}`;
  }
  return JSON.stringify(value);
}
