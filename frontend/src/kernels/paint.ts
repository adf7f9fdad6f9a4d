/** Paint the loom on a canvas: board, pegs with their channels, bands, letters. Decides nothing.
 *
 * Canvases and not a tree of shapes, because a mat of 2,000 bands must scroll: the picture is painted when
 * something changes, tile by tile, and scrolling only moves it. Lengths are mm in the drawing. */
import type { Point } from "./band_outline";
import { HATCHES, inkOn } from "./hatch";
import type { BandLine } from "./band_lines";
import type { Box } from "./view";

export interface Palette {
  ink: string;
  softInk: string;
  accent: string;
  board: string;
  rim: string;
  peg: string;
  halo: string;
}

export const LIGHT: Palette = { ink: "#2e3338", softInk: "#555b60", accent: "#a83f2a", board: "#f3ecdd", rim: "#cfc4ab", peg: "#ffffff", halo: "#ffffff" };
export const DARK: Palette = { ink: "#e9e4d8", softInk: "#b9bab6", accent: "#f0967e", board: "#34322d", rim: "#5b564b", peg: "#55524b", halo: "#22211e" };
const FONT = '"Atkinson Hyperlegible", sans-serif';
const THICK = 1.6;

export interface PegSpot {
  at: string;
  x: number;
  y: number;
  /** The way its channel opens, degrees clockwise from the right. */
  deg: number;
  busy: boolean;
}

export interface BandLook {
  letter: string;
  name: string;
  tint: string;
  hatch: number;
}

export interface Scene {
  board: Box;
  pegs: readonly PegSpot[];
  radius: number;
  parts: readonly BandLine[];
  look: (band: number) => BandLook;
  falling: ReadonlySet<number>;
  chosen: ReadonlySet<number>;
  faded: number | null;
  /** Bands that are being laid. */
  coming: readonly Coming[];
  lettered: boolean;
  you: You;
  palette: Palette;
  /** The board is left clear: a picture lies under it. */
  clear: boolean;
}

/** A band that is being laid: its line, and how far it reaches from its middle. */
export interface Coming {
  d: string;
  mid: Point;
  reach: number;
  look: BandLook;
  chosen: boolean;
  /** It would be laid by what the hand is about to do. */
  ghost?: boolean;
}

interface You {
  text: string;
  x: number;
  y: number;
  upwards: boolean;
}

/** A line to be painted, and how. */
interface PaintedLine {
  d: string;
  tint: string;
  hatch: number;
  falls: boolean;
  chosen: boolean;
  faded: boolean;
  /** Its letter and where it stands; empty for none. */
  letter: string;
  x: number;
  y: number;
}

/** All that is seen of a scene in a window, and nothing else: two that are the same look the same. */
export interface TileContent {
  board: Box;
  you: You;
  radius: number;
  pegs: readonly PegSpot[];
  lines: readonly PaintedLine[];
  palette: Palette;
  clear: boolean;
}

/** What of a scene lies in `window` (mm). */
export function tileContent(scene: Scene, window: Box): TileContent {
  const isNear = (x: number, y: number, room: number) =>
    x > window.left - room && x < window.left + window.width + room && y > window.top - room && y < window.top + window.height + room;
  const lettered = new Set<number>();
  const lines: PaintedLine[] = [];
  const add = (d: string, [x, y]: Point, { tint, hatch }: BandLook, letter: string, falls: boolean, chosen: boolean, faded: boolean) =>
    lines.push({ d, tint, hatch, falls, chosen, faded, letter, x, y });
  for (const { band, d, mid, reach } of scene.parts) {
    if (!isNear(mid[0], mid[1], reach + THICK + 1)) continue;
    const look = scene.look(band);
    add(d, mid, look, scene.lettered && !lettered.has(band) ? look.letter : "", scene.falling.has(band), scene.chosen.has(band), scene.faded === band);
    lettered.add(band);
  }
  for (const { d, mid, reach, look, chosen, ghost } of scene.coming) if (isNear(mid[0], mid[1], reach + THICK + 1)) add(d, mid, look, "", false, chosen, ghost ?? false);
  return { palette: scene.palette, clear: scene.clear, board: scene.board, you: scene.you, radius: scene.radius, pegs: scene.pegs.filter(({ x, y }) => isNear(x, y, 6)), lines };
}

/** Whether two tile contents look the same. */
export function isSame(a: TileContent, b: TileContent): boolean {
  return (
    a.radius === b.radius && a.palette === b.palette && a.clear === b.clear && hasSameFields(a.board, b.board) && hasSameFields(a.you, b.you) && haveSameFields(a.pegs, b.pegs) && haveSameFields(a.lines, b.lines)
  );
}

function haveSameFields<T extends object>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((each, i) => hasSameFields(each, b[i]!));
}

function hasSameFields<T extends object>(a: T, b: T): boolean {
  if (a === b) return true;
  for (const key in a) if (a[key] !== b[key]) return false;
  return true;
}

const paths = new Map<string, Path2D>();

/** Paint what is seen in `window` (mm), `scale` pixels a mm, the window's corner at the canvas's. */
export function paint(ctx: CanvasRenderingContext2D, seen: TileContent, window: Box, scale: number): void {
  ctx.setTransform(scale, 0, 0, scale, -window.left * scale, -window.top * scale);
  ctx.clearRect(window.left, window.top, window.width, window.height);
  ctx.lineJoin = "round";
  ctx.textAlign = "center";
  ctx.textBaseline = "middle";
  paintBoard(ctx, seen);
  for (const peg of seen.pegs) paintPeg(ctx, peg, seen.radius, seen.palette);
  for (const line of seen.lines) paintBand(ctx, line, seen.palette);
  ctx.font = `700 2.5px ${FONT}`;
  for (const { letter, x, y } of seen.lines) if (letter) paintHaloed(ctx, letter, x, y, seen.palette.ink, seen.palette.halo, 0.9);
  if (scale * 2.3 > 5) for (const peg of seen.pegs) paintName(ctx, peg, seen.palette);
}

function paintBoard(ctx: CanvasRenderingContext2D, { board, you, palette, clear }: TileContent): void {
  const roundedRect = (inset: number, r: number) => {
    ctx.beginPath();
    ctx.roundRect(board.left + inset, board.top + inset, board.width - 2 * inset, board.height - 2 * inset, r);
  };
  roundedRect(1, 6);
  ctx.fillStyle = palette.board;
  if (!clear) ctx.fill();
  stroke(ctx, palette.ink, 0.5);
  roundedRect(3, 4.5);
  stroke(ctx, palette.rim, 0.35);
  ctx.save();
  ctx.translate(you.x, you.y);
  if (you.upwards) ctx.rotate(-Math.PI / 2);
  ctx.font = `3.6px ${FONT}`;
  ctx.fillStyle = palette.softInk;
  ctx.fillText(you.text, 0, 0);
  ctx.restore();
}

function paintPeg(ctx: CanvasRenderingContext2D, { x, y, deg }: PegSpot, radius: number, palette: Palette): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = palette.peg;
  ctx.fill();
  stroke(ctx, palette.ink, 0.45);
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  ctx.beginPath();
  ctx.moveTo(x + c * radius * 0.15, y + s * radius * 0.15);
  ctx.lineTo(x + c * radius * 1.02, y + s * radius * 1.02);
  stroke(ctx, palette.ink, 1.1);
}

function paintName(ctx: CanvasRenderingContext2D, { at, x, y, deg, busy }: PegSpot, palette: Palette): void {
  const angle = (deg * Math.PI) / 180;
  ctx.font = `${busy ? "700 " : ""}2.3px ${FONT}`;
  paintHaloed(ctx, at, x - 0.6 * Math.cos(angle), y - 0.4 * Math.sin(angle), busy ? palette.ink : palette.softInk, palette.halo, 0.7);
}

function paintBand(ctx: CanvasRenderingContext2D, { d, tint, hatch, falls, chosen, faded }: PaintedLine, palette: Palette): void {
  const path = pathOf(d);
  ctx.globalAlpha = faded ? 0.4 : 1;
  if (chosen) stroke(ctx, palette.accent, THICK + 2.2, path);
  stroke(ctx, palette.ink, THICK + 0.55, path);
  stroke(ctx, tint, THICK, path);
  const dash = HATCHES[hatch % HATCHES.length]!;
  if (dash) {
    ctx.setLineDash(dash.split(" ").map(Number));
    ctx.lineCap = "round";
    stroke(ctx, inkOn(tint), THICK * 0.36, path);
    ctx.lineCap = "butt";
  }
  if (falls) {
    ctx.setLineDash([0.5, 2.7]);
    stroke(ctx, palette.accent, THICK + 1.6, path);
  }
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

function paintHaloed(ctx: CanvasRenderingContext2D, text: string, x: number, y: number, ink: string, halo: string, width: number): void {
  ctx.strokeStyle = halo;
  ctx.lineWidth = width;
  ctx.strokeText(text, x, y);
  ctx.fillStyle = ink;
  ctx.fillText(text, x, y);
}

function stroke(ctx: CanvasRenderingContext2D, ink: string, width: number, path?: Path2D): void {
  ctx.strokeStyle = ink;
  ctx.lineWidth = width;
  if (path) ctx.stroke(path);
  else ctx.stroke();
}

function pathOf(d: string): Path2D {
  let path = paths.get(d);
  if (!path) {
    if (paths.size > 40_000) paths.clear();
    paths.set(d, (path = new Path2D(d)));
  }
  return path;
}
