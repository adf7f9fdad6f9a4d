/** How far apart two colours look, in OKLab (B. Ottosson, "A perceptual color space for image processing", 2020). */
export function oklab(hex: string): [number, number, number] {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const v = parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

/** Nearer than this, two bands side by side are easily taken for each other (our own judgement, no source). */
const NEAR = 0.1;

/** Whether any two of the colours are close; equal ones count. */
export function anyClose(hexes: readonly string[]): boolean {
  const labs = hexes.map(oklab);
  return labs.some((a, i) => labs.slice(i + 1).some((b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < NEAR));
}
