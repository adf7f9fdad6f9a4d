/** Pegs that are drawn by hand, each in a place of its own: lengths in mm of the plan, x to the right, y away from the maker. */
import { parseAddress, printAddress } from "./address";
import type { Layout } from "./pattern";

export type FreePegs = Extract<Layout, { kind: "pegs" }>;
export type FreePeg = FreePegs["pegs"][number];

/** No two pegs stand nearer than this, from middle to middle: a band goes between them, and no two are one. */
const LEAST_GAP_MM = 2;

/** Every peg of a loom as one that stands by itself. `plan` holds the name, place and channel (degrees anticlockwise from
 * the right) of each. */
export function freePegsOf(loom: Layout, plan: readonly (readonly [string, number, number, number])[]): FreePeg[] {
  if (loom.kind === "pegs") return [...loom.pegs];
  const round = (mm: number): number => Math.round(mm * 10) / 10;
  return plan.map(([at, x, y, deg]) => ({ at, x_mm: round(x), y_mm: round(y), channel: WAYS[Math.round((((deg % 360) + 360) % 360) / 90) % 4]! }));
}
const WAYS = ["right", "far", "left", "near"] as const;

/** The name of a new peg: the next number in the row of the one that was chosen. */
export function nextAddress(pegs: readonly FreePeg[], chosen: string | null): string {
  const row = parseAddress(chosen ?? "")?.row ?? parseAddress(pegs[0]?.at ?? "")?.row ?? 0;
  const numbers = pegs.map(({ at }) => parseAddress(at)).flatMap((address) => (address?.row === row ? [address.number] : []));
  return printAddress({ row, number: Math.max(0, ...numbers) + 1 })!;
}

/** Whether a place is free for a peg, or for the one of that name to go to. */
export function isFree(pegs: readonly FreePeg[], x_mm: number, y_mm: number, but: string | null = null): boolean {
  return pegs.every((peg) => peg.at === but || Math.hypot(peg.x_mm - x_mm, peg.y_mm - y_mm) >= LEAST_GAP_MM);
}

/** The pegs with one more; the same ones where its place is taken. */
export function addPeg(pegs: readonly FreePeg[], x_mm: number, y_mm: number, chosen: string | null): readonly FreePeg[] {
  if (!isFree(pegs, x_mm, y_mm)) return pegs;
  const like = pegs.find(({ at }) => at === chosen);
  return [...pegs, { at: nextAddress(pegs, chosen), x_mm, y_mm, ...(like?.channel ? { channel: like.channel } : {}) }];
}

/** The pegs with one changed; the same ones where its place or its name is another's. */
export function changePeg(pegs: readonly FreePeg[], at: string, change: Partial<FreePeg>): readonly FreePeg[] {
  const old = pegs.find((peg) => peg.at === at);
  if (!old) return pegs;
  const peg = { ...old, ...change };
  const named = peg.at === at || (parseAddress(peg.at) !== null && !pegs.some((other) => other.at === peg.at));
  return named && isFree(pegs, peg.x_mm, peg.y_mm, at) ? pegs.map((each) => (each.at === at ? peg : each)) : pegs;
}

/** The loom of pegs that were drawn; the old one where nothing is changed. */
export function loomOfPegs(pegs: readonly FreePeg[], old: Layout): Layout {
  if (!pegs.length || (old.kind === "pegs" && JSON.stringify(old.pegs) === JSON.stringify(pegs))) return old;
  const own = { ...(old.peg_mm === undefined ? {} : { peg_mm: old.peg_mm }), ...(old.height_mm === undefined ? {} : { height_mm: old.height_mm }) };
  return { ...own, kind: "pegs", pegs: [...pegs] };
}
