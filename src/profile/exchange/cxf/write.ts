/**
 * CxF3 core, ISO 17972-1:2015, schema 3.0.018: the document, its order of elements (xs:sequence) and attributes.
 * A curve on a regular grid that starts at 360 to 400 nm is a ReflectanceSpectrum; bands and irregular grids are a
 * CustomSpectrum, one SpectralPoint each. 1.0 is 100 per cent. No claim is made to part 4 of the standard.
 */
import { XMLBuilder } from 'fast-xml-parser';
import type { SpectralRow, SpectralTable, Written } from '../spectral-table.ts';
import { say } from '../sentences.ts';

export const CXF_NAMESPACE = 'http://colorexchangeformat.com/CxF3-core';

const builder = new XMLBuilder({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  format: true,
  indentBy: '  ',
  suppressEmptyNode: true,
});

/** `createdIso` is written where the table does not say when it was made: every Object needs a date. */
export function writeCxf(table: SpectralTable, createdIso: string): Written {
  const notHeld: string[] = [];
  const rows = table.rows.filter((r) => r.quantity === 'reflectance');
  if (rows.length < table.rows.length) {
    notHeld.push(say('constants-left-out'));
  }
  const created = table.created ?? createdIso;
  const specs = new Map<string, { id: string; row: SpectralRow }>();
  const specOf = (row: SpectralRow): string => {
    const key = regular(row) ? `grid ${row.wavelengthsNm[0]} ${step(row)}` : 'custom';
    if (!specs.has(key)) specs.set(key, { id: `cs${specs.size + 1}`, row });
    return specs.get(key)!.id;
  };
  const objects = rows.map((row, i) => objectOf(row, i, created, specOf(row), notHeld, table.white));
  const document = {
    '?xml': { '@version': '1.0', '@encoding': 'UTF-8' },
    'cc:CxF': {
      '@xmlns:cc': CXF_NAMESPACE,
      '@xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
      'cc:FileInformation': {
        'cc:Creator': table.originator ?? 'tintladder',
        'cc:CreationDate': created,
        'cc:Description': table.title || 'readings',
        'cc:Tag': Object.entries({ SchemaOfTags: 'tintladder/1', ...table.notes }).map(([n, v]) => ({
          '@Name': n,
          '@Value': v,
        })),
      },
      'cc:Resources': {
        'cc:ObjectCollection': { 'cc:Object': objects },
        'cc:ColorSpecificationCollection': {
          'cc:ColorSpecification': [...specs.values()].map(({ id, row }) => specification(id, row, table)),
        },
      },
    },
  };
  return { text: builder.build(document), notHeld };
}

function step(row: SpectralRow): number {
  return row.wavelengthsNm[1]! - row.wavelengthsNm[0]!;
}

/** A grid the schema's ReflectanceSpectrum can hold: even steps, starting at 360 to 400 nm. */
function regular(row: SpectralRow): boolean {
  const nm = row.wavelengthsNm;
  return nm.length >= 2 && nm[0]! >= 360 && nm[0]! <= 400 && nm.every((v, i) => v === nm[0]! + i * step(row));
}

function objectOf(
  row: SpectralRow,
  index: number,
  created: string,
  spec: string,
  notHeld: string[],
  white: string | undefined,
): object {
  const tags = { SampleId: row.id, ...row.tags };
  if (row.lab || row.xyz) {
    const sentence = say('lab-left-out', { under: white ? say('under', { white }) : '' });
    if (!notHeld.includes(sentence)) notHeld.push(sentence);
  }
  return {
    '@ObjectType': 'Standard',
    '@Name': row.name,
    '@Id': `s${String(index + 1).padStart(4, '0')}`,
    'cc:CreationDate': row.tags['CreationDate'] ?? created,
    'cc:ColorValues': regular(row)
      ? {
          'cc:ReflectanceSpectrum': {
            '@StartWL': String(row.wavelengthsNm[0]),
            '@ColorSpecification': spec,
            '#text': row.values.map(String).join(' '),
          },
        }
      : {
          'cc:CustomSpectrum': {
            '@ColorSpecification': spec,
            'cc:SpectralPoint': row.wavelengthsNm.map((nm, i) => ({
              '@WL': String(nm),
              '#text': String(row.values[i]),
            })),
          },
        },
    'cc:TagCollection': {
      '@Name': 'Sample',
      'cc:Tag': Object.entries(tags).map(([n, v]) => ({ '@Name': n, '@Value': v })),
    },
  };
}

function specification(id: string, row: SpectralRow, table: SpectralTable): object {
  const geometry = table.geometry ?? 'not stated';
  return {
    '@Id': id,
    'cc:MeasurementSpec': {
      'cc:MeasurementType': regular(row) ? 'Spectrum_Reflectance' : 'Spectrum_Custom',
      'cc:GeometryChoice':
        geometry === '45/0'
          ? {
              'cc:SingleAngle': {
                'cc:SingleAngleConfiguration': 'Annular',
                'cc:IlluminationAngle': '45',
                'cc:MeasurementAngle': '0',
              },
            }
          : { 'cc:UnknownGeometry': geometry },
      ...(regular(row)
        ? {
            'cc:WavelengthRange': {
              '@StartWL': String(row.wavelengthsNm[0]),
              '@Increment': String(step(row)),
            },
          }
        : {}),
      ...(table.instrument ? { 'cc:Device': { 'cc:Model': table.instrument } } : {}),
    },
  };
}
