/** Looms as a form speaks of them: straight, joined of alike straight ones, or round. */
import type { Layout, Rows } from "./pattern";

type Joined = Extract<Layout, { kind: "joined" }>;
type Round = Extract<Layout, { kind: "round" }>;

export interface LoomAsked {
  kind: Layout["kind"];
  rows: number;
  pegs: number;
  pitch: number;
  gap: number;
  shifted: boolean;
  channel: NonNullable<Rows["channel"]>;
  /** How many straight looms are joined, and how. */
  looms: number;
  side: NonNullable<Joined["side"]>;
  rings: number;
  diameter: number;
  opens: NonNullable<Round["channel"]>;
}

const USUAL: LoomAsked = {
  kind: "rows", rows: 3, pegs: 13, pitch: 16, gap: 14, shifted: false, channel: "far", looms: 2, side: "beside", rings: 1, diameter: 100, opens: "out",
};

/** What a form shows for a loom. Of a joined loom it shows the first one. */
export function askedOf(loom: Layout): LoomAsked {
  const shown = { ...USUAL, kind: loom.kind };
  if (loom.kind === "round")
    return { ...shown, pegs: loom.pegs, rings: loom.rings ?? 1, diameter: loom.diameter_mm, opens: loom.channel ?? "out" };
  const straight = loom.kind === "joined" ? loom.looms[0] : loom.kind === "rows" ? loom : null;
  if (!straight) return shown;
  const joined = loom.kind === "joined" ? { looms: loom.looms.length, side: loom.side ?? "beside" } : {};
  return {
    ...shown,
    ...joined,
    rows: straight.rows,
    pegs: straight.pegs,
    pitch: straight.pitch_mm ?? 16,
    gap: straight.row_gap_mm ?? 14,
    shifted: (straight.shift ?? []).some((each) => each !== 0),
    channel: straight.channel ?? "far",
  };
}

/** The loom that is asked for. What the form does not speak of stays as it was; so does a loom of which nothing is changed. */
export function loomOf(asked: LoomAsked, old: Layout): Layout {
  if (asked.kind === "pegs" || JSON.stringify(asked) === JSON.stringify(askedOf(old))) return old;
  const own = { ...(old.peg_mm === undefined ? {} : { peg_mm: old.peg_mm }), ...(old.height_mm === undefined ? {} : { height_mm: old.height_mm }) };
  if (asked.kind === "round") {
    const kept = old.kind === "round" ? old : own;
    return { ...kept, kind: "round", pegs: asked.pegs, rings: asked.rings, diameter_mm: asked.diameter, channel: asked.opens };
  }
  const first = old.kind === "joined" ? old.looms[0]! : old.kind === "rows" ? old : own;
  const straight: Rows = {
    ...first, kind: "rows", rows: asked.rows, pegs: asked.pegs, pitch_mm: asked.pitch, row_gap_mm: asked.gap, channel: asked.channel,
  };
  const was = old.kind === "pegs" || old.kind === "round" ? false : askedOf(old).shifted;
  if (asked.shifted && !(was && straight.shift?.length === asked.rows))
    straight.shift = Array.from({ length: asked.rows }, (_, row) => (row % 2 ? 0.5 : 0));
  if (!asked.shifted) delete straight.shift;
  if (asked.kind === "rows") return straight;
  const kept = old.kind === "joined" ? old : own;
  return { ...kept, kind: "joined", looms: Array.from({ length: asked.looms }, () => straight), side: asked.side };
}
