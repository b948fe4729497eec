import { type Turn, see } from './orthographic.ts';

/** A body as triangles in CIELAB: L, a, b of three corners each, and one CSS colour each. */
export interface SolidBody {
  readonly facets: Float32Array;
  readonly paint: readonly string[];
}

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}
/** Where a colour is drawn, px. */
export type Placing = (lab: { readonly L: number; readonly a: number; readonly b: number }) => Place;

/** A colour's place when the body stands turned in the middle of a picture. */
export function placing(width: number, height: number, scale: number, turn: Turn): Placing {
  return (lab) => {
    const p = see(lab, turn);
    return { x: width / 2 + scale * p.x, y: height / 2 - scale * p.y, depth: p.depth };
  };
}

interface Drawn {
  readonly depth: number;
  readonly draw: () => void;
}

/**
 * Draws a body and the lines it stands among, the farthest first, so that what is near covers what is behind it. Seams
 * between facets are closed with a line of their own colour.
 */
export function paintBody(
  pen: CanvasRenderingContext2D,
  body: SolidBody | undefined,
  lines: readonly (readonly Place[])[],
  place: Placing,
  ink: string,
): void {
  const drawn: Drawn[] = lines.flatMap((line) =>
    line.slice(1).map((to, i) => {
      const from = line[i]!;
      return {
        depth: (from.depth + to.depth) / 2,
        draw: () => {
          pen.strokeStyle = ink;
          pen.lineWidth = 1.2;
          pen.beginPath();
          pen.moveTo(from.x, from.y);
          pen.lineTo(to.x, to.y);
          pen.stroke();
        },
      };
    }),
  );
  const { facets, paint } = body ?? { facets: new Float32Array(), paint: [] };
  const corner = (p: number): Place => place({ L: facets[p]!, a: facets[p + 1]!, b: facets[p + 2]! });
  paint.forEach((colour, f) => {
    const [one, two, three] = [corner(9 * f), corner(9 * f + 3), corner(9 * f + 6)];
    drawn.push({
      depth: (one.depth + two.depth + three.depth) / 3,
      draw: () => {
        pen.fillStyle = colour;
        pen.strokeStyle = colour;
        pen.lineWidth = 1.2;
        pen.beginPath();
        pen.moveTo(one.x, one.y);
        pen.lineTo(two.x, two.y);
        pen.lineTo(three.x, three.y);
        pen.closePath();
        pen.fill();
        pen.stroke();
      },
    });
  });
  pen.lineJoin = 'round';
  drawn.sort((p, q) => p.depth - q.depth);
  for (const { draw } of drawn) draw();
}
