/** The line a stretched band takes round discs: the edge of their convex hull, as points. */
export interface Disc {
  x: number;
  y: number;
  r: number;
}

const SAMPLES = 20;
const RING = Array.from({ length: SAMPLES }, (_, k) => {
  const angle = (2 * Math.PI * k) / SAMPLES;
  return [Math.cos(angle), Math.sin(angle)] as const;
});

export type Point = readonly [number, number];

export function bandOutline(discs: readonly Disc[]): Point[] {
  const points: Point[] = [];
  for (const { x, y, r } of discs) for (const [c, s] of RING) points.push([x + r * c, y + r * s]);
  return hull(points);
}

/** Convex hull, anticlockwise (Andrew's monotone chain, 1979); points on an edge are dropped. */
export function hull(points: readonly Point[]): Point[] {
  const order = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (walk: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of walk) {
      while (chain.length > 1 && area(chain.at(-2)!, chain.at(-1)!, p) <= 1e-9) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return order.length < 2 ? order : [...half(order), ...half(order.toReversed())];
}

function area(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

export function closedPath(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join("L")}Z`;
}
