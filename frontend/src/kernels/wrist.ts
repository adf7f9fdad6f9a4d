/** A flat piece bent round a wrist: x runs round it, y along the arm, z outward. The arm lies along y. */
export interface Flat {
  left: number;
  length: number;
  bottom: number;
}

/** Where a piece begins, how long it is, and its lowest point; `strands` hold three numbers a point. */
export function flatOf(strands: readonly (readonly number[])[]): Flat {
  let [left, right, bottom] = [Infinity, -Infinity, Infinity];
  for (const points of strands)
    for (let i = 0; i < points.length; i += 3) {
      left = Math.min(left, points[i]!);
      right = Math.max(right, points[i]!);
      bottom = Math.min(bottom, points[i + 2]!);
    }
  return { left, length: Math.max(right - left, 1e-9), bottom };
}

/** How long and wide strands lie, in mm, their own thickness included. */
export function sizeOf(strands: readonly { points_mm: readonly number[]; radius_mm: number }[]): { length_mm: number; width_mm: number } {
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (const { points_mm, radius_mm } of strands)
    points_mm.forEach((value, i) => {
      const axis = i % 3;
      if (axis === 2) return;
      low[axis] = Math.min(low[axis]!, value - radius_mm);
      high[axis] = Math.max(high[axis]!, value + radius_mm);
    });
  return { length_mm: Math.max(0, high[0]! - low[0]!), width_mm: Math.max(0, high[1]! - low[1]!) };
}

/** The radius (mm) at which a piece lies that closes round a wrist: its own where it is longer than the wrist. */
export function wornRadius(flat: Flat, girth: number): number {
  return Math.max(girth, flat.length) / (2 * Math.PI);
}

/** Bend a strand. Its middle faces the maker, its ends meet behind; a piece shorter than the wrist is stretched evenly, a longer one hangs loose. */
export function bendRound(points: readonly number[], flat: Flat, girth: number, radius: number): number[] {
  const out = new Array<number>(points.length);
  const round = wornRadius(flat, girth);
  for (let i = 0; i < points.length; i += 3) {
    const angle = 2 * Math.PI * ((points[i]! - flat.left) / flat.length - 0.5);
    const far = round + radius + points[i + 2]! - flat.bottom;
    out[i] = far * Math.sin(angle);
    out[i + 1] = points[i + 1]!;
    out[i + 2] = far * Math.cos(angle);
  }
  return out;
}
