/**
 * Tolerant reading of CxF3 (ISO 17972-1): elements by local name whatever the prefix; missing dates, Lab in attributes
 * and a step given on the spectrum are accepted. Documents with a DTD or entity declarations, or nested too deep, are
 * refused before they are parsed.
 */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import type { Geometry } from '../../../calibrate/swatch-set/schema.ts';
import { ascending, numberFrom } from '../spectral-columns.ts';
import {
  type Assumption,
  ExchangeProblem,
  FILE_LIMITS,
  type ReadChoices,
  type SpectralRow,
  type SpectralTable,
  refuseOversize,
} from '../spectral-table.ts';
import { say } from '../sentences.ts';

type Node = Record<string, unknown>;

const LISTS = new Set([
  'Object',
  'ColorSpecification',
  'SpectralPoint',
  'Tag',
  'TagCollection',
  'ReflectanceSpectrum',
  'CustomSpectrum',
]);

export function readCxf(text: string, choices: ReadChoices = {}): SpectralTable {
  refuseOversize(text);
  refuseHostile(text);
  const document = parsed(text.replace(/^\uFEFF/, ''));
  const root = document['CxF'];
  if (typeof root !== 'object' || root === null) {
    throw new ExchangeProblem(say('no-cxf'));
  }
  const cxf = node(root);
  const info = node(cxf['FileInformation']);
  const resources = node(cxf['Resources']);
  const specs = new Map(
    list(node(resources['ColorSpecificationCollection'])['ColorSpecification']).map((s) => [
      textOf(s['@Id']),
      node(s['MeasurementSpec']),
    ]),
  );
  const assumptions: Assumption[] = [];
  const objects = list(node(resources['ObjectCollection'])['Object']);
  if (objects.length > FILE_LIMITS.rows) {
    throw new ExchangeProblem(say('objects', { objects: objects.length, most: FILE_LIMITS.rows }));
  }
  const rows = objects.flatMap((o, i) => rowsOf(o, i, specs, assumptions));
  if (rows.length === 0) throw new ExchangeProblem(say('no-spectra'));
  const geometry = choices.geometry ?? geometryOf([...specs.values()]);
  const created = textOf(info['CreationDate']);
  const instrument = [...specs.values()].map((s) => textOf(node(s['Device'])['Model'])).find((m) => m);
  return {
    title: textOf(info['Description']) ?? '',
    ...(created ? { created } : {}),
    ...(textOf(info['Creator']) ? { originator: textOf(info['Creator'])! } : {}),
    ...(instrument ? { instrument } : {}),
    ...(geometry ? { geometry } : {}),
    rows,
    notes: Object.fromEntries(tagsOf(info).filter(([n]) => n !== 'SchemaOfTags')),
    assumptions,
  };
}

/** @throws ExchangeProblem for text that is not XML, whatever the parser says of it. */
function parsed(text: string): Node {
  try {
    const valid = XMLValidator.validate(text);
    if (valid !== true) {
      throw new ExchangeProblem(say('not-well-formed', { line: valid.err.line, cause: valid.err.msg }));
    }
    const parser = new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '@',
      removeNSPrefix: true,
      parseTagValue: false,
      parseAttributeValue: false,
      processEntities: true,
      isArray: (name) => LISTS.has(name),
    });
    return node(parser.parse(text));
  } catch (error) {
    if (error instanceof ExchangeProblem) throw error;
    throw new ExchangeProblem(say('not-xml', { cause: (error as Error).message }));
  }
}

function refuseHostile(text: string): void {
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) {
    throw new ExchangeProblem(say('entities'));
  }
  // Walked by indexOf, not by one expression: a file of opening brackets alone must not cost its square.
  let depth = 0;
  let at = 0;
  while ((at = text.indexOf('<', at)) >= 0) {
    const end = text.indexOf('>', at);
    if (end < 0) return;
    const next = text[at + 1] ?? '';
    if (next === '/') depth--;
    else if (/[A-Za-z_]/.test(next) && text[end - 1] !== '/') depth++;
    if (depth > FILE_LIMITS.xmlDepth) {
      throw new ExchangeProblem(say('too-deep', { depth: FILE_LIMITS.xmlDepth }));
    }
    at = end + 1;
  }
}

function rowsOf(
  object: Node,
  index: number,
  specs: Map<string | undefined, Node>,
  assumptions: Assumption[],
): SpectralRow[] {
  const name = textOf(object['@Name']) ?? say('sample', { number: index + 1 });
  const values = node(object['ColorValues']);
  const { SampleId: tagged, ...tags } = Object.fromEntries(
    list(object['TagCollection']).flatMap(tagsOf),
  ) as Record<string, string>;
  const id = tagged ?? textOf(object['@Id']) ?? String(index + 1);
  const curves = [
    ...list(values['ReflectanceSpectrum']).map((s) => gridCurve(s, name, specs, assumptions)),
    ...list(values['CustomSpectrum']).map((s) =>
      list(s['SpectralPoint']).map((p) => ({ nm: number(p['@WL'], name), value: number(p['#text'], name) })),
    ),
  ];
  const labNode = node(values['ColorCIELab']);
  const lab = ['L', 'A', 'B'].map((k) => textOf(labNode[k]) ?? textOf(labNode[`@${k}`]));
  const labPart = lab.every((v) => v !== undefined)
    ? { lab: { L: number(lab[0], name), a: number(lab[1], name), b: number(lab[2], name) } }
    : {};
  const base = { id, name, quantity: 'reflectance' as const, tags, ...labPart };
  if (curves.length === 0) return 'lab' in labPart ? [{ ...base, wavelengthsNm: [], values: [] }] : [];
  return curves.map((points) => ({ ...base, ...ascending(points, `"${name}"`) }));
}

function gridCurve(
  spectrum: Node,
  name: string,
  specs: Map<string | undefined, Node>,
  assumptions: Assumption[],
): { nm: number; value: number }[] {
  const range = node(node(specs.get(textOf(spectrum['@ColorSpecification'])))['WavelengthRange']);
  const values = (textOf(spectrum['#text']) ?? '')
    .trim()
    .split(/\s+/)
    .map((v) => number(v, name));
  const start = textOf(spectrum['@StartWL']) ?? textOf(range['@StartWL']);
  const written =
    textOf(range['@Increment']) ?? textOf(spectrum['@Interval']) ?? textOf(spectrum['@Increment']);
  if (start === undefined) throw new ExchangeProblem(say('no-start', { name }));
  const end = textOf(spectrum['@EndWL']);
  let increment = written === undefined ? undefined : number(written, name);
  if (increment === undefined && end !== undefined && values.length > 1) {
    increment = (number(end, name) - number(start, name)) / (values.length - 1);
    const sentence = say('step-taken', { nm: increment });
    if (!assumptions.some((a) => a.sentence === sentence)) assumptions.push({ choice: 'none', sentence });
  }
  if (increment === undefined || !(increment > 0)) {
    throw new ExchangeProblem(say('no-step', { name }));
  }
  return values.map((value, i) => ({ nm: number(start, name) + i * increment, value }));
}

function geometryOf(specs: readonly Node[]): Geometry | undefined {
  for (const spec of specs) {
    const choice = node(spec['GeometryChoice']);
    const single = node(choice['SingleAngle']);
    if (textOf(single['IlluminationAngle']) === '45' && textOf(single['MeasurementAngle']) === '0')
      return '45/0';
    const words = textOf(choice['UnknownGeometry']);
    if (words === 'd/8 specular included' || words === 'd/8 specular excluded' || words === '45/0')
      return words;
  }
  return undefined;
}

function tagsOf(parent: Node): [string, string][] {
  return list(parent['Tag']).map((t) => [textOf(t['@Name']) ?? '', textOf(t['@Value']) ?? '']);
}

const node = (v: unknown): Node =>
  typeof v === 'object' && v !== null && !Array.isArray(v) ? (v as Node) : {};
const list = (v: unknown): Node[] =>
  Array.isArray(v) ? v.map((x: unknown) => (typeof x === 'object' ? (x as Node) : { '#text': x })) : [];

function textOf(v: unknown): string | undefined {
  if (typeof v === 'string') return v;
  const inner = node(v)['#text'];
  return typeof inner === 'string' ? inner : undefined;
}

function number(v: unknown, name: string): number {
  return numberFrom(textOf(v) ?? '', say('spectrum-of', { name }), false);
}
