import {
  curveOfSteps,
  type EffectiveBand,
  effectiveBands,
  responseOf,
} from '../../src/calibrate/bands/effective-bands.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { Head } from '../../src/device/head/head.ts';
import type { Channel } from '../../src/device/head/channels.ts';
import type { HeadRecord } from '../api/head-record.ts';
import type { ReadingForm } from '../api/readings.ts';

/** The channels of a head that carry colour: a clear or flicker channel watches the lamp and is left out. */
export function colourChannels(head: Pick<Head, 'kind' | 'channels'>): number[] {
  const all = head.channels.map((_, i) => i);
  if (head.kind === 'tristimulus') return all.slice(0, 3);
  return all.filter((i) => head.channels[i]!.centreNm !== undefined && visible(head.channels[i]!));
}

/** Near infrared tells nothing about a colour. */
function visible(channel: Channel): boolean {
  return channel.centreNm! >= 370 && channel.centreNm! <= 740;
}

/** How the readings of a head are described to the fit. */
export function formOfHead(head: Pick<Head, 'kind' | 'channels' | 'geometry' | 'identity'>): ReadingForm {
  const { geometry } = head;
  const name = `${head.identity.model} ${head.identity.serial}`;
  const used = colourChannels(head).map((i) => head.channels[i]!);
  const seen = effective(head);
  const withResponse = seen ? { response: responseOf(seen) } : {};
  switch (head.kind) {
    case 'spectral':
      return { kind: 'spectral', geometry, name, wavelengths: used.map((c) => c.centreNm!), ...withResponse };
    case 'bands':
      return {
        kind: 'bands',
        geometry,
        name,
        bands: used.map((c, i) => ({
          name: c.name,
          centre: seen?.[i]!.centreNm ?? c.centreNm!,
          fwhm: seen?.[i]!.fwhmNm ?? c.fwhmNm ?? 30,
        })),
        ...withResponse,
      };
    case 'tristimulus':
      // The head's own factory matrix is for D65 and 10 degrees (hardware-notes/protocol.md).
      return { kind: 'tristimulus', geometry, name, illuminant: 'D65', observer: '10deg', ...withResponse };
  }
}

/** Channels stay what they are while a head is there, and working through their curves takes tens of milliseconds. */
const known = new WeakMap<readonly Channel[], EffectiveBand[] | undefined>();

/** What the channels really see, where the head tells all of their curves; a head's table already holds its lamp. */
function effective(head: Pick<Head, 'kind' | 'channels'>): EffectiveBand[] | undefined {
  if (!known.has(head.channels)) known.set(head.channels, workedOut(head));
  return known.get(head.channels);
}

function workedOut(head: Pick<Head, 'kind' | 'channels'>): EffectiveBand[] | undefined {
  const used = colourChannels(head).map((i) => head.channels[i]!);
  if (used.length === 0 || used.some((c) => !c.response)) return undefined;
  try {
    return effectiveBands(used.map((c) => ({ name: c.name, ...curveOfSteps(c.response!) })));
  } catch (error) {
    // A table that is no table: the catalogue's centres and widths are what is left.
    if (error instanceof ReadingRefused) return undefined;
    throw error;
  }
}

/** What each channel really sees beside what its catalogue says; empty for a head that names no bands. */
export function bandsOfHead(head: Pick<Head, 'kind' | 'channels'>): HeadRecord['bands'] {
  const used = colourChannels(head).map((i) => head.channels[i]!);
  const seen = effective(head);
  return used.flatMap((channel, i) => {
    const centreNm = seen?.[i]!.centreNm ?? channel.centreNm;
    const fwhmNm = seen?.[i]!.fwhmNm ?? channel.fwhmNm;
    if (centreNm === undefined || fwhmNm === undefined) return [];
    const strength = seen?.[i]!.strength ?? null;
    return [{ name: channel.name, catalogueNm: channel.centreNm ?? null, centreNm, fwhmNm, strength }];
  });
}
