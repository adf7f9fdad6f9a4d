/** The skin of a strand: a smooth line through its points, and rings of corners round it. */
export interface Tube {
  /** Three numbers a corner. */
  positions: Float32Array;
  normals: Float32Array;
  /** Three corners a triangle, anticlockwise from outside. */
  index: Uint32Array;
  /** For each ring, the point that it lies at or after: a whole number and a share of the way to the next. */
  along: Float32Array;
  sides: number;
}

type Vec = [number, number, number];

const sub = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec, b: Vec): Vec => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const scale = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k];
const unit = (a: Vec): Vec => scale(a, 1 / (Math.hypot(...a) || 1));

/** `points` holds three numbers a point; a closed strand's last point joins its first. `parts` is how many rings each
 * edge is given. The line is the cubic through the points whose slope at each is that of the parabola through it and
 * its neighbours (a Catmull–Rom line that heeds uneven edges). */
export function tube(points: readonly number[], closed: boolean, radius: number, sides: number, parts: number): Tube {
  const n = points.length / 3;
  const at = (i: number): Vec => {
    const k = closed ? ((i % n) + n) % n : Math.min(Math.max(i, 0), n - 1);
    return [points[3 * k]!, points[3 * k + 1]!, points[3 * k + 2]!];
  };
  const slope = (i: number): Vec => {
    const [before, after] = [sub(at(i), at(i - 1)), sub(at(i + 1), at(i))];
    const [a, b] = [Math.hypot(...before), Math.hypot(...after)];
    if (a === 0 || b === 0) return unit(a === 0 ? after : before);
    return [0, 1, 2].map((k) => ((before[k]! / a) * b + (after[k]! / b) * a) / (a + b)) as Vec;
  };
  const edges = closed ? n : n - 1;
  const line: Vec[] = [];
  const along: number[] = [];
  for (let i = 0; i < edges; i++) {
    const [p, q, m, l] = [at(i), at(i + 1), slope(i), slope(i + 1)];
    const length = Math.hypot(...sub(q, p));
    for (let k = 0; k < parts; k++) {
      const s = k / parts;
      const [h1, h2] = [s * s * (3 - 2 * s), s * (1 - s) * (1 - s)];
      const h3 = -s * s * (1 - s);
      line.push([0, 1, 2].map((c) => p[c]! * (1 - h1) + q[c]! * h1 + length * (m[c]! * h2 + l[c]! * h3)) as Vec);
      along.push(i + s);
    }
  }
  if (!closed) {
    line.push(at(n - 1));
    along.push(n - 1);
  }
  return buildSkin(line, along, closed, radius, sides);
}

function buildSkin(line: readonly Vec[], along: readonly number[], closed: boolean, radius: number, sides: number): Tube {
  const rings = line.length;
  const tangents = line.map((_, i) => {
    const before = line[i - 1] ?? (closed ? line[rings - 1]! : line[0]!);
    const after = line[i + 1] ?? (closed ? line[0]! : line[rings - 1]!);
    return unit(sub(after, before));
  });
  const ups = frames(line, tangents);
  // Carried once round, a closed strand's frame comes back turned; every ring takes its share of that back.
  const last = closed ? transport(line[rings - 1]!, line[0]!, tangents[rings - 1]!, tangents[0]!, ups[rings - 1]!) : ups[0]!;
  const turned = Math.atan2(dot(cross(ups[0]!, last), tangents[0]!), dot(ups[0]!, last));
  const positions = new Float32Array(rings * sides * 3);
  const normals = new Float32Array(rings * sides * 3);
  for (let i = 0; i < rings; i++) {
    const [t, u, p] = [tangents[i]!, ups[i]!, line[i]!];
    const v = cross(t, u);
    for (let k = 0; k < sides; k++) {
      const angle = (2 * Math.PI * k) / sides - (turned * i) / rings;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      for (let a = 0; a < 3; a++) {
        const out = u[a]! * c + v[a]! * s;
        normals[(i * sides + k) * 3 + a] = out;
        positions[(i * sides + k) * 3 + a] = p[a]! + radius * out;
      }
    }
  }
  const spans = closed ? rings : rings - 1;
  const index = new Uint32Array(spans * sides * 6);
  for (let i = 0, w = 0; i < spans; i++)
    for (let k = 0; k < sides; k++) {
      const [a, b] = [i * sides + k, i * sides + ((k + 1) % sides)];
      const [c, d] = [((i + 1) % rings) * sides + k, ((i + 1) % rings) * sides + ((k + 1) % sides)];
      for (const corner of [a, b, c, b, d, c]) index[w++] = corner;
    }
  return { positions, normals, index, along: Float32Array.from(along), sides };
}

/** Frames that turn as little as can be (W. Wang et al., ACM Trans. Graph. 27 (2008) 2: two reflections a step). */
function frames(line: readonly Vec[], tangents: readonly Vec[]): Vec[] {
  const t = tangents[0]!;
  const aside: Vec = Math.abs(t[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const ups = [unit(cross(t, aside))];
  for (let i = 1; i < line.length; i++) ups.push(transport(line[i - 1]!, line[i]!, tangents[i - 1]!, tangents[i]!, ups[i - 1]!));
  return ups;
}

function transport(from: Vec, to: Vec, t: Vec, next: Vec, up: Vec): Vec {
  const step = sub(to, from);
  const size = dot(step, step);
  if (size === 0) return up;
  const mirror = (a: Vec): Vec => sub(a, scale(step, (2 * dot(step, a)) / size));
  const [upThere, tThere] = [mirror(up), mirror(t)];
  const rest = sub(next, tThere);
  const left = dot(rest, rest);
  return unit(left < 1e-18 ? upThere : sub(upThere, scale(rest, (2 * dot(rest, upThere)) / left)));
}
