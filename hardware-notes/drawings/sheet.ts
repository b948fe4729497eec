export interface Point {
  readonly x: number;
  readonly y: number;
}

const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
const n = (value: number): string => String(Math.round(value * 100) / 100);

export type Line = 'edge' | 'thin' | 'hidden' | 'axis' | 'light' | 'view' | 'wire';

const STROKES: Readonly<Record<Line, string>> = {
  edge: 'stroke="#111" stroke-width="0.5"',
  thin: 'stroke="#111" stroke-width="0.18"',
  hidden: 'stroke="#111" stroke-width="0.25" stroke-dasharray="1.6 1"',
  axis: 'stroke="#555" stroke-width="0.18" stroke-dasharray="5 1 1 1"',
  light: 'stroke="#b45309" stroke-width="0.3"',
  view: 'stroke="#1d4ed8" stroke-width="0.3"',
  wire: 'stroke="#111" stroke-width="0.4"',
};

/** One drawing on an A4 sheet, landscape. Coordinates are millimetres of paper, y downwards. */
export class Sheet {
  readonly #parts: string[] = [];
  readonly width = 297;
  readonly height = 210;
  readonly title: string;

  constructor(title: string, subtitle: string) {
    this.title = title;
    this.text({ x: 12, y: 15 }, title, { size: 5.5, weight: 'bold' });
    this.text({ x: 12, y: 21.5 }, subtitle, { size: 3.4 });
    const caution = 'Design estimate: never built, nothing measured. Millimetres. Print without scaling.';
    this.text({ x: 285, y: 203 }, caution, { size: 3, anchor: 'end' });
    this.raw('<rect x="8" y="6" width="281" height="199" fill="none" stroke="#111" stroke-width="0.3"/>');
  }

  raw(svg: string): void {
    this.#parts.push(svg);
  }

  line(kind: Line, ...points: readonly Point[]): void {
    const path = points.map(({ x, y }) => `${n(x)},${n(y)}`).join(' ');
    this.raw(`<polyline points="${path}" fill="none" ${STROKES[kind]}/>`);
  }

  shape(points: readonly Point[], fill = 'url(#hatch)', kind: Line = 'edge'): void {
    const path = points.map(({ x, y }) => `${n(x)},${n(y)}`).join(' ');
    this.raw(`<polygon points="${path}" fill="${fill}" ${STROKES[kind]}/>`);
  }

  circle(at: Point, radius: number, kind: Line = 'edge', fill = 'none'): void {
    this.raw(`<circle cx="${n(at.x)}" cy="${n(at.y)}" r="${n(radius)}" fill="${fill}" ${STROKES[kind]}/>`);
  }

  box(at: Point, width: number, height: number, fill = '#fff', kind: Line = 'edge'): void {
    const corners = [at, { x: at.x + width, y: at.y }, { x: at.x + width, y: at.y + height }, { x: at.x, y: at.y + height }];
    this.shape(corners, fill, kind);
  }

  text(
    at: Point,
    words: string,
    style: { size?: number; anchor?: 'start' | 'middle' | 'end'; weight?: string; turn?: number; colour?: string } = {},
  ): void {
    const { size = 3.1, anchor = 'start', weight = 'normal', turn = 0, colour = '#111' } = style;
    const turned = turn ? ` transform="rotate(${turn} ${n(at.x)} ${n(at.y)})"` : '';
    this.raw(
      `<text x="${n(at.x)}" y="${n(at.y)}" font-size="${size}" text-anchor="${anchor}" font-weight="${weight}" fill="${colour}"${turned}>${escape(words)}</text>`,
    );
  }

  lines(at: Point, words: readonly string[], size = 3.1): void {
    words.forEach((line, i) => this.text({ x: at.x, y: at.y + i * size * 1.45 }, line, { size }));
  }

  /** A horizontal dimension between two x at height y, with extension lines from the two points. */
  across(a: Point, b: Point, y: number, label: string): void {
    for (const p of [a, b]) this.line('thin', { x: p.x, y: p.y + Math.sign(y - p.y) }, { x: p.x, y: y + Math.sign(y - p.y) });
    this.#arrowed({ x: a.x, y }, { x: b.x, y });
    this.#label({ x: (a.x + b.x) / 2, y: y - 1 }, label, Math.abs(b.x - a.x), b.x > a.x ? b : a, y);
  }

  /** A vertical dimension between two y at x; the label stands `share` of the way from a to b. */
  upright(a: Point, b: Point, x: number, label: string, share = 0.5): void {
    for (const p of [a, b]) this.line('thin', { x: p.x + Math.sign(x - p.x), y: p.y }, { x: x + Math.sign(x - p.x), y: p.y });
    this.#arrowed({ x, y: a.y }, { x, y: b.y });
    this.text({ x: x - 1, y: a.y + share * (b.y - a.y) }, label, { anchor: 'middle', turn: -90 });
  }

  /** Words with a thin line to what they mean. */
  note(words: string, at: Point, to: Point, anchor: 'start' | 'end' = 'start'): void {
    const elbow = { x: at.x + (anchor === 'start' ? -1 : 1), y: at.y - 1 };
    this.line('thin', elbow, to);
    this.circle(to, 0.5, 'thin', '#111');
    this.text(at, words, { anchor });
  }

  svg(): string {
    return [
      `<svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm" viewBox="0 0 297 210" font-family="sans-serif">`,
      `<title>${escape(this.title)}</title>`,
      '<defs><pattern id="hatch" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
        '<rect width="2" height="2" fill="#eee"/><line x1="0" y1="0" x2="0" y2="2" stroke="#777" stroke-width="0.25"/></pattern></defs>',
      '<rect width="297" height="210" fill="#fff"/>',
      ...this.#parts,
      '</svg>',
      '',
    ].join('\n');
  }

  #label(at: Point, label: string, room: number, outside: Point, y: number): void {
    if (room > label.length * 1.8) this.text(at, label, { anchor: 'middle' });
    else this.text({ x: outside.x + 2.5, y: y + 1 }, label);
  }

  #arrowed(a: Point, b: Point): void {
    this.line('thin', a, b);
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const ux = (b.x - a.x) / length;
    const uy = (b.y - a.y) / length;
    for (const [tip, way] of [
      [a, 1],
      [b, -1],
    ] as const) {
      const back = { x: tip.x + way * ux * 2, y: tip.y + way * uy * 2 };
      const wing = { x: -uy * 0.5, y: ux * 0.5 };
      this.shape([tip, { x: back.x + wing.x, y: back.y + wing.y }, { x: back.x - wing.x, y: back.y - wing.y }], '#111', 'thin');
    }
  }
}
