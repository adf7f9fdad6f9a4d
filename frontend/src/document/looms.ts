/** Looms as a form speaks of them: straight, joined of alike straight ones, or round. */
import type { Layout, Rows } from "./pattern";

type Joined = Extract<Layout, { kind: "joined" }>;
type Round = Extract<Layout, { kind: "round" }>;

export interface LoomChoice {
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

const USUAL: LoomChoice = {
  kind: "rows", rows: 3, pegs: 13, pitch: 16, gap: 14, shifted: false, channel: "far", looms: 2, side: "beside", rings: 1, diameter: 100, opens: "out",
};

/** What a form shows for a loom. Of a joined loom it shows the first one. */
export function choiceOf(loom: Layout): LoomChoice {
  const choice = { ...USUAL, kind: loom.kind };
  if (loom.kind === "round")
    return { ...choice, pegs: loom.pegs, rings: loom.rings ?? 1, diameter: loom.diameter_mm, opens: loom.channel ?? "out" };
  const straight = loom.kind === "joined" ? loom.looms[0] : loom.kind === "rows" ? loom : null;
  if (!straight) return choice;
  const joined = loom.kind === "joined" ? { looms: loom.looms.length, side: loom.side ?? "beside" } : {};
  return {
    ...choice,
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
export function loomOf(choice: LoomChoice, old: Layout): Layout {
  if (choice.kind === "pegs" || JSON.stringify(choice) === JSON.stringify(choiceOf(old))) return old;
  const own = { ...(old.peg_mm === undefined ? {} : { peg_mm: old.peg_mm }), ...(old.height_mm === undefined ? {} : { height_mm: old.height_mm }) };
  if (choice.kind === "round") {
    const kept = old.kind === "round" ? old : own;
    return { ...kept, kind: "round", pegs: choice.pegs, rings: choice.rings, diameter_mm: choice.diameter, channel: choice.opens };
  }
  const first = old.kind === "joined" ? old.looms[0]! : old.kind === "rows" ? old : own;
  const straight: Rows = {
    ...first, kind: "rows", rows: choice.rows, pegs: choice.pegs, pitch_mm: choice.pitch, row_gap_mm: choice.gap, channel: choice.channel,
  };
  const was = old.kind === "pegs" || old.kind === "round" ? false : choiceOf(old).shifted;
  if (choice.shifted && !(was && straight.shift?.length === choice.rows))
    straight.shift = Array.from({ length: choice.rows }, (_, row) => (row % 2 ? 0.5 : 0));
  if (!choice.shifted) delete straight.shift;
  if (choice.kind === "rows") return straight;
  const kept = old.kind === "joined" ? old : own;
  return { ...kept, kind: "joined", looms: Array.from({ length: choice.looms }, () => straight), side: choice.side };
}
