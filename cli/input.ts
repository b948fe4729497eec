import { existsSync, readFileSync } from 'node:fs';
import type { SwatchSet } from '../src/calibrate/swatch-set/schema.ts';
import { parseWhiteName, type WhiteName } from '../src/colour/illuminant.ts';
import type { PaletteProfile } from '../src/profile/schema.ts';
import { openFile, type OpenedFile } from '../server/importing/open-file.ts';
import type { ImportRequest } from '../server/api/imports.ts';
import { openTable } from '../server/importing/open-table.ts';
import type { SpectralTable } from '../src/profile/exchange/spectral-table.ts';
import { CommandProblem } from './problem.ts';

/** Largest file a command reads: far above any palette. */
const MOST_BYTES = 64 * 1024 * 1024;

/** @throws CommandProblem when the file is not there, not text or too large */
export function readText(file: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file === '-' ? 0 : file);
  } catch (error) {
    const code = (error as { code?: unknown }).code;
    const why =
      code === 'ENOENT'
        ? 'is not there'
        : code === 'EISDIR'
          ? 'is a folder'
          : code === 'EACCES'
            ? 'may not be read by this user'
            : `cannot be read (${(error as Error).message})`;
    throw new CommandProblem(`${file} ${why}; name a file.`);
  }
  if (bytes.length > MOST_BYTES) {
    throw new CommandProblem(
      `${file} is ${Math.round(bytes.length / 1e6)} MB; up to 64 MB is read, so split it.`,
    );
  }
  return bytes.toString('utf8');
}

/** A swatch set, or anything that can be read as one. */
export function readSet(file: string): SwatchSet {
  const opened = openAny(file);
  if (opened.kind === 'swatch set') return opened.set;
  throw new CommandProblem(
    `${file} is a palette profile; a swatch set is needed here, with what was painted and read.`,
  );
}

/** @param assume answers to what the file leaves open */
export function openAny(file: string, assume?: ImportRequest['assume']): OpenedFile {
  return openFile(
    { fileName: file, text: readText(file), sidecar: sidecarOf(file), assume },
    new Date().toISOString(),
  );
}

/** A file in one of the open formats as a table, whatever was painted; undefined for a JSON document. */
export function openAsTable(file: string, assume: ImportRequest['assume'] = {}): SpectralTable | undefined {
  const text = readText(file);
  return /^[\uFEFF\s]*[[{]/.test(text) ? undefined : openTable(text, { ...assume, sidecar: sidecarOf(file) });
}

function sidecarOf(file: string): string | undefined {
  const beside = file.replace(/\.csv$/i, '.json');
  return beside !== file && existsSync(beside) ? readText(beside) : undefined;
}

/** A palette profile, as JSON or as a table of constants. @throws CommandProblem, ProfileProblem */
export function readProfileFile(file: string): PaletteProfile {
  const opened = openAny(file);
  if (opened.kind === 'palette profile') return opened.profile;
  throw new CommandProblem(`${file} is a swatch set; a palette profile is needed here, so fit it first.`);
}

/**
 * "blue=1,white=3" to masses.
 * @throws CommandProblem
 */
export function parseMasses(text: string): Record<string, number> {
  const masses: Record<string, number> = {};
  for (const part of text.split(',')) {
    const at = part.lastIndexOf('=');
    const id = part.slice(0, at).trim();
    const mass = Number(part.slice(at + 1).trim());
    if (at < 0 || id === '' || part.slice(at + 1).trim() === '' || !Number.isFinite(mass) || mass < 0) {
      throw new CommandProblem(
        `"${part.trim()}" is no mass; write tube=grams with a comma between tubes, such as 'blue=1,white=3'.`,
        2,
      );
    }
    if (id in masses) throw new CommandProblem(`"${id}" is given twice; give each tube once.`, 2);
    masses[id] = mass;
  }
  return masses;
}

/** @throws CommandProblem naming what is allowed */
export function whiteOf(options: { readonly illuminant: string; readonly observer: string }): WhiteName {
  try {
    return parseWhiteName(options.illuminant, options.observer);
  } catch (error) {
    throw new CommandProblem((error as Error).message, 2);
  }
}
