/** Paint the loom on a canvas: board, pegs with their channels, bands, letters. Decides nothing.
 *
 * Canvases and not a tree of shapes, because a mat of 2,000 bands must scroll: the picture is painted when
 * something changes, tile by tile, and scrolling only moves it. Lengths are mm in the drawing. */
import { HATCHES, inkOn } from "./hatch";
import type { Part } from "./parts";
import type { Box } from "./view";

export const GRAPHITE = "#2e3338";
const ACCENT = "#a83f2a";
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

export interface Look {
  letter: string;
  name: string;
  tint: string;
  hatch: number;
}

export interface Scene {
  board: Box;
  pegs: readonly PegSpot[];
  radius: number;
  parts: readonly Part[];
  look: (band: number) => Look;
  falling: ReadonlySet<number>;
  chosen: number | null;
  faded: number | null;
  /** Bands that are being laid. */
  coming: readonly { d: string; look: Look; chosen: boolean }[];
  lettered: boolean;
  you: { text: string; x: number; y: number; upwards: boolean };
}

const paths = new Map<string, Path2D>();

/** Paint what lies in `window` (mm), `scale` pixels a mm, the window's corner at the canvas's. */
export function paint(ctx: CanvasRenderingContext2D, scene: Scene, window: Box, scale: number): void {
  ctx.setTransform(scale, 0, 0, scale, -window.left * scale, -window.top * scale);
  ctx.clearRect(window.left, window.top, window.width, window.height);
  ctx.lineJoin = "round";
  ctx.textAlign = "center";
  ctx.textBaseline = "middle";
  paintBoard(ctx, scene);
  const seen = (x: number, y: number, room: number) =>
    x > window.left - room && x < window.left + window.width + room && y > window.top - room && y < window.top + window.height + room;
  const pegs = scene.pegs.filter(({ x, y }) => seen(x, y, 6));
  for (const peg of pegs) paintPeg(ctx, peg, scene.radius);
  const parts = scene.parts.filter(({ mid, reach }) => seen(mid[0], mid[1], reach));
  for (const { band, d } of parts)
    paintBand(ctx, pathOf(d), scene.look(band), {
      falls: scene.falling.has(band),
      chosen: scene.chosen === band,
      faded: scene.faded === band,
    });
  if (scene.lettered) paintLetters(ctx, parts, scene);
  for (const { d, look, chosen } of scene.coming) paintBand(ctx, pathOf(d), look, { falls: false, chosen, faded: false });
  if (scale * 2.3 > 5) for (const peg of pegs) paintName(ctx, peg);
}

function paintBoard(ctx: CanvasRenderingContext2D, { board, you }: Scene): void {
  const rounded = (inset: number, r: number) => {
    ctx.beginPath();
    ctx.roundRect(board.left + inset, board.top + inset, board.width - 2 * inset, board.height - 2 * inset, r);
  };
  rounded(1, 6);
  ctx.fillStyle = "#f3ecdd";
  ctx.fill();
  stroke(ctx, GRAPHITE, 0.5);
  rounded(3, 4.5);
  stroke(ctx, "#cfc4ab", 0.35);
  ctx.save();
  ctx.translate(you.x, you.y);
  if (you.upwards) ctx.rotate(-Math.PI / 2);
  ctx.font = `3.6px ${FONT}`;
  ctx.fillStyle = "#555b60";
  ctx.fillText(you.text, 0, 0);
  ctx.restore();
}

function paintPeg(ctx: CanvasRenderingContext2D, { x, y, deg }: PegSpot, radius: number): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = "#fff";
  ctx.fill();
  stroke(ctx, GRAPHITE, 0.45);
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  ctx.beginPath();
  ctx.moveTo(x + c * radius * 0.15, y + s * radius * 0.15);
  ctx.lineTo(x + c * radius * 1.02, y + s * radius * 1.02);
  stroke(ctx, GRAPHITE, 1.1);
}

function paintName(ctx: CanvasRenderingContext2D, { at, x, y, deg, busy }: PegSpot): void {
  const angle = (deg * Math.PI) / 180;
  ctx.font = `${busy ? "700 " : ""}2.3px ${FONT}`;
  haloed(ctx, at, x - 0.6 * Math.cos(angle), y - 0.4 * Math.sin(angle), busy ? GRAPHITE : "#555b60", 0.7);
}

interface State {
  falls: boolean;
  chosen: boolean;
  faded: boolean;
}

function paintBand(ctx: CanvasRenderingContext2D, path: Path2D, look: Look, { falls, chosen, faded }: State): void {
  ctx.globalAlpha = faded ? 0.28 : 1;
  if (chosen) stroke(ctx, ACCENT, THICK + 2.2, path);
  stroke(ctx, GRAPHITE, THICK + 0.55, path);
  stroke(ctx, look.tint, THICK, path);
  const dash = HATCHES[look.hatch % HATCHES.length]!;
  if (dash) {
    ctx.setLineDash(dash.split(" ").map(Number));
    ctx.lineCap = "round";
    stroke(ctx, inkOn(look.tint), THICK * 0.36, path);
    ctx.lineCap = "butt";
  }
  if (falls) {
    ctx.setLineDash([0.5, 2.7]);
    stroke(ctx, ACCENT, THICK + 1.6, path);
  }
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

function paintLetters(ctx: CanvasRenderingContext2D, parts: readonly Part[], scene: Scene): void {
  ctx.font = `700 2.5px ${FONT}`;
  const told = new Set<number>();
  for (const { band, mid } of parts) {
    if (told.has(band)) continue;
    told.add(band);
    haloed(ctx, scene.look(band).letter, mid[0], mid[1], GRAPHITE, 0.9);
  }
}

function haloed(ctx: CanvasRenderingContext2D, text: string, x: number, y: number, ink: string, halo: number): void {
  ctx.strokeStyle = "#fff";
  ctx.lineWidth = halo;
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
