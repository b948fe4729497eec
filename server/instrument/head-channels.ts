import type { Head } from '../../src/device/head/head.ts';
import type { Channel } from '../../src/device/head/channels.ts';
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
  const response = responseOf(used);
  const withResponse = response ? { response } : {};
  switch (head.kind) {
    case 'spectral':
      return { kind: 'spectral', geometry, name, wavelengths: used.map((c) => c.centreNm!), ...withResponse };
    case 'bands':
      return {
        kind: 'bands',
        geometry,
        name,
        bands: used.map((c) => ({ name: c.name, centre: c.centreNm!, fwhm: c.fwhmNm ?? 30 })),
        ...withResponse,
      };
    case 'tristimulus':
      // The head's own factory matrix is for D65 and 10 degrees (hardware-notes/protocol.md).
      return { kind: 'tristimulus', geometry, name, illuminant: 'D65', observer: '10deg', ...withResponse };
  }
}

function responseOf(used: readonly Channel[]): { wavelengths: number[]; rows: number[][] } | undefined {
  const first = used[0]?.response;
  if (!first) return undefined;
  const same = used.every(
    (c) =>
      c.response?.startNm === first.startNm &&
      c.response.stepNm === first.stepNm &&
      c.response.values.length === first.values.length,
  );
  if (!same) return undefined;
  const rows = used.map((c) => {
    const sum = c.response!.values.reduce((a, b) => a + b, 0);
    return c.response!.values.map((v) => v / sum);
  });
  if (!rows.flat().every(Number.isFinite)) return undefined;
  return { wavelengths: first.values.map((_, i) => first.startNm + i * first.stepNm), rows };
}
