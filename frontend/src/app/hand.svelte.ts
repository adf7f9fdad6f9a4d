/** The hand: gives every gesture to the tool that is taken up, and makes the move that comes of it. */
import { again as moveAgain, againToEnd, changeMove, insertStep, insertSteps, movedTo, useAt, type Origin } from "../document/edits";
import { addresses, expand } from "../document/expand";
import type { Move } from "../document/pattern";
import type { Lie } from "../kernels/lie";
import { carry, CARRY_IDLE, type Carry, type Way } from "../tools/carry";
import type { Gesture } from "../tools/gesture";
import { lay, LAY_IDLE, type Lay } from "../tools/lay";
import { once, ONCE_IDLE, type Once, type OneWay } from "../tools/once";
import { t } from "../words/words.svelte";
import { bench, commit, commitMoves, insertAt, momentAfter, originOf, type ToolName } from "./bench.svelte";

class Hand {
  lay = $state.raw<Lay>(LAY_IDLE);
  carry = $state.raw<Carry>(CARRY_IDLE);
  once = $state.raw<Once>(ONCE_IDLE);
}

export const hand = new Hand();

export function takeUp(tool: ToolName): void {
  hand.lay = LAY_IDLE;
  hand.carry = CARRY_IDLE;
  hand.once = ONCE_IDLE;
  bench.tool = tool;
  bench.snapped = null;
  bench.band = null;
  bench.peg = null;
  bench.said = "";
}

/** Give a gesture to the tool at hand. */
export function gesture(made: Gesture, lie: Lie): void {
  if (bench.tool === "motif") {
    if (made.kind === "press") layMotif(made.peg);
    else if (made.kind === "cancel") takeUp("point");
    return;
  }
  if (bench.tool === "move" || bench.tool === "copy") {
    if (made.kind === "press") putBand(made.peg, bench.tool);
    else if (made.kind === "cancel") takeUp("point");
    return;
  }
  const move = answer(made, lie);
  if (move) make(move);
}

/** The move that laid a band, and where it comes from in the document that was looked at. */
export function laidBy(band: number | null): { step: number; path: string; origin: Origin } | null {
  const move = (bench.seen.moves ?? []).find((each) => each.events.some((e) => e.type === "laid" && e.band === band));
  const origin = move && originOf(move.step);
  return origin ? { step: move.step, path: move.path, origin } : null;
}

/** Put the band at hand, or another one like it, so that its first peg is that one. */
function putBand(peg: string, how: "move" | "copy"): void {
  const laid = laidBy(bench.band);
  if (!laid || !bench.doc || bench.doc !== bench.seenDoc) return;
  const old = expand(bench.doc)[laid.origin.index]?.[laid.origin.within];
  const put = old && movedTo(old, peg);
  if (!put || !addresses([put]).every(isPeg)) {
    bench.said = t("moved-off-rows");
    return;
  }
  const edit =
    how === "copy"
      ? insertStep(laid.origin.index + 1, put, t("edit-copy"))
      : changeMove(bench.doc, laid.origin, () => put, t("edit-move-band"));
  if (edit) commit(edit);
  takeUp("point");
}

function answer(made: Gesture, lie: Lie): Move | undefined {
  const tool = bench.tool;
  const loops = (peg: string) => lie.stacks.get(peg)?.length ?? 0;
  switch (tool) {
    case "lay": {
      const got = lay(hand.lay, made, { colour: bench.colour, turns: bench.turns, twists: bench.twists });
      hand.lay = got.state;
      return got.move;
    }
    case "hook":
    case "slide":
    case "transfer": {
      const got = carry(hand.carry, made, tool satisfies Way, loops);
      hand.carry = got.state;
      bench.peg = got.state.from;
      return got.move;
    }
    case "lift":
    case "bind":
    case "knot":
    case "clip": {
      const end = [...lie.stacks.keys()].find((holder) => /^[a-z][a-z0-9-]*\.\d+$/.test(holder));
      const with_ = { colour: bench.colour, loop: 1, end: end ? end.slice(0, end.lastIndexOf(".")) : null };
      const got = once(hand.once, made, tool satisfies OneWay, with_);
      hand.once = got.state;
      return got.move;
    }
    default:
      if (made.kind === "press") bench.peg = bench.peg === made.peg ? null : made.peg;
      if (made.kind === "cancel") [bench.peg, bench.band, bench.snapped] = [null, null, null];
      return undefined;
  }
}

/** Make a move at the moment shown: it goes into the document after the step that is shown. */
export function make(move: Move): void {
  makeAll([move]);
}

/** Make several moves as one edit. */
export function makeAll(moves: readonly Move[]): void {
  bench.said = "";
  const [first] = moves;
  if (first) commitMoves(insertSteps(insertAt(), moves, labelOf(first)), moves, momentAfter(moves.length));
}

function labelOf(move: Move): string {
  return move.do === "place" || move.do === "wind" ? t("edit-lay") : t("edit-move", { what: t(wordFor(move)) });
}

/** Work the motif at hand with its first peg on that one. */
function layMotif(peg: string): void {
  const motif = bench.doc?.motifs.find((each) => each.name === bench.motif);
  const use = bench.doc && motif && useAt(bench.doc, motif, peg, bench.colour, bench.mirror);
  if (!use || !bench.doc) return;
  const count = expand({ ...bench.doc, steps: [use] }).flat().length;
  commit(insertStep(insertAt(), use, t("edit-lay")), momentAfter(count));
}

function wordFor(move: Move): string {
  return move.do === "turn" || move.do === "hang" ? `do-${move.do}` : `tool-${move.do}`;
}

/** The last move before the moment shown, once more, one stride on; or to the end, as far as the pegs reach. */
export function again(toEnd = false): void {
  if (!bench.doc) return;
  const before = expand(bench.doc)
    .slice(0, insertAt())
    .flat()
    .filter((move) => move !== null);
  const last = before.at(-1);
  if (!last) return;
  const next = moveAgain(before.at(-2) ?? null, last);
  const moves = toEnd ? againToEnd(before.at(-2) ?? null, last, isPeg) : next && addresses([next]).every(isPeg) ? [next] : [];
  if (moves.length) makeAll(moves);
  else bench.said = t(toEnd && next ? "no-way-on" : "moved-off-rows");
}

export function isPeg(at: string): boolean {
  return bench.seen.pegs?.some((peg) => peg[0] === at) ?? false;
}

/** What to do next, in a sentence. */
export function tip(): string {
  if (bench.said) return bench.said;
  if (bench.tool === "lay" && hand.lay.over.length) return t("tip-lay-more", { pegs: hand.lay.over.join(", ") });
  if (hand.carry.from) return t("tip-hook-to", { loop: hand.carry.loop, peg: hand.carry.from });
  if (bench.tool === "motif") return t("tip-motif", { name: bench.motif ?? "" });
  return t(`tip-${bench.tool}`);
}
