/** Tension as a tint: from pale and slack to dark and taut, so that it reads without hue as well. */
type Rgb = readonly [number, number, number];

const STOPS: readonly Rgb[] = [
  [0.949, 0.902, 0.784],
  [0.882, 0.69, 0.38],
  [0.753, 0.404, 0.196],
  [0.486, 0.161, 0.133],
  [0.227, 0.075, 0.106],
];

/** `share` runs from 0 to 1; beyond that it stays at the end. */
export function heat(share: number): Rgb {
  const at = Math.min(Math.max(share, 0), 1) * (STOPS.length - 1);
  const i = Math.min(Math.floor(at), STOPS.length - 2);
  const [a, b, k] = [STOPS[i]!, STOPS[i + 1]!, at - i];
  return [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k, a[2] + (b[2] - a[2]) * k];
}

export function heatCss(): string {
  return `linear-gradient(to right, ${STOPS.map((rgb) => `rgb(${rgb.map((v) => Math.round(v * 255)).join(" ")})`).join(", ")})`;
}

/** `#rrggbb` as shares of one. */
export function rgbOf(hex: string): Rgb {
  return [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255) as unknown as Rgb;
}
