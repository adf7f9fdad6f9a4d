/** A picture under the loom: turned, made larger or smaller and moved, never distorted, so that two of its points lie where they belong.
 *
 * Points of the picture are pixels, x to the right and y down; those of the plan are mm, x to the right and y away from the maker. */

export type Spot = readonly [number, number];

/** Picture to plan: by the complex number `by` (mm a pixel, and turn), then on by `on` (mm). */
export interface PictureFit {
  by: Spot;
  on: Spot;
}

const times = ([a, b]: Spot, [c, d]: Spot): Spot => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Spot, [c, d]: Spot): Spot => [(a * c + b * d) / (c * c + d * d), (b * c - a * d) / (c * c + d * d)];
const minus = ([a, b]: Spot, [c, d]: Spot): Spot => [a - c, b - d];

/** Where a point of the picture lies. */
export function placeOf(fit: PictureFit, [x, y]: Spot): Spot {
  const [a, b] = times(fit.by, [x, -y]);
  return [a + fit.on[0], b + fit.on[1]];
}

/** The point of the picture that lies there. */
export function pointAt(fit: PictureFit, place: Spot): Spot {
  const [x, y] = over(minus(place, fit.on), fit.by);
  return [x, -y];
}

/** Lay the picture so that point a lies at `atA` and b at `atB`; null where the two points, or the two places, are one. */
export function fitTwoPoints(a: Spot, b: Spot, atA: Spot, atB: Spot): PictureFit | null {
  const [p, q]: [Spot, Spot] = [[a[0], -a[1]], [b[0], -b[1]]];
  if (Math.hypot(...minus(q, p)) < 1 || Math.hypot(...minus(atB, atA)) < 0.5) return null;
  const by = over(minus(atB, atA), minus(q, p));
  return { by, on: minus(atA, times(by, p)) };
}

/** Lay a picture of that size upright in the middle of a box of the plan, as large as fits. */
export function fitInto(width: number, height: number, box: { left: number; bottom: number; width: number; height: number }): PictureFit {
  const scale = Math.min(box.width / width, box.height / height) || 1;
  return { by: [scale, 0], on: [box.left + (box.width - width * scale) / 2, box.bottom + (box.height + height * scale) / 2] };
}

/** How a picture of that size lies, in numbers: its width (mm), its middle (mm), its turn (degrees anticlockwise). */
export interface Lie {
  width_mm: number;
  x_mm: number;
  y_mm: number;
  turn: number;
}

export function lieOf(fit: PictureFit, width: number, height: number): Lie {
  const [x_mm, y_mm] = placeOf(fit, [width / 2, height / 2]);
  return { width_mm: Math.hypot(...fit.by) * width, x_mm, y_mm, turn: (Math.atan2(fit.by[1], fit.by[0]) * 180) / Math.PI };
}

export function fitOf({ width_mm, x_mm, y_mm, turn }: Lie, width: number, height: number): PictureFit {
  const [scale, angle] = [width_mm / width, (turn * Math.PI) / 180];
  const by: Spot = [scale * Math.cos(angle), scale * Math.sin(angle)];
  return { by, on: minus([x_mm, y_mm], times(by, [width / 2, -height / 2])) };
}
