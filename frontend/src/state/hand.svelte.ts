/** The hand: gives every gesture to the tool that is taken up, and makes the move that comes of it. */
import { changeMove, insertStep, insertSteps, moveTo, repeatedMove, repeatToEnd, type Origin } from "../document/edits";
import { motifUseAt } from "../document/runs";
import { addresses, expand } from "../document/expand";
import type { Move } from "../document/pattern";
import { usualTarget, type LoopPositions } from "../kernels/loop_positions";
import { carryLoop, NOTHING_CARRIED, type CarryState, type CarryWay } from "../tools/carry";
import type { Gesture } from "../tools/gesture";
import { layBand, NOTHING_LAID, type LayState } from "../tools/lay";
import { endName, isFreeEnd, workOnePeg, NO_PEG, type OnePegState, type OnePegWay } from "../tools/one_peg";
import { t } from "../words/words.svelte";
import { bench, type ToolName } from "./bench.svelte";
import { tracing } from "./tracing.svelte";
import { pastedAt, pasteEdit } from "./clipboard";
import { insertionIndex, momentAfter, originOf, positionsNow } from "./moments";

class Hand {
  lay = $state.raw<LayState>(NOTHING_LAID);
  carry = $state.raw<CarryState>(NOTHING_CARRIED);
  onePeg = $state.raw<OnePegState>(NO_PEG);
}

export const hand = new Hand();

export function takeUp(tool: ToolName): void {
  hand.lay = NOTHING_LAID;
  hand.carry = NOTHING_CARRIED;
  hand.onePeg = NO_PEG;
  if (tool !== bench.tool) bench.several = false;
  bench.tool = tool;
  bench.snapped = null;
  bench.band = null;
  bench.chosen = [];
  bench.ghost = [];
  bench.stackPeg = null;
  bench.message = "";
}

/** Give a gesture to the tool at hand. */
export function handleGesture(made: Gesture, positions: LoopPositions): void {
  if (bench.tool === "trace") {
    if (made.kind === "cancel") takeUp("lay");
    return;
  }
  if (bench.tool === "motif") {
    if (made.kind === "press") layMotif(made.peg);
    else if (made.kind === "cancel") takeUp("point");
    return;
  }
  if (bench.tool === "paste") {
    if (made.kind === "press") pasteAt(made.peg);
    else if (made.kind === "cancel") takeUp("point");
    return;
  }
  if (bench.tool === "move" || bench.tool === "copy") {
    if (made.kind === "press") placeBand(made.peg, bench.tool);
    else if (made.kind === "cancel") takeUp("point");
    return;
  }
  if (made.kind === "press" && isFreeEnd(made.peg) && !["clip", "knot", "transfer"].includes(bench.tool)) takeUp("clip"); // what else would one do with it
  const moves = movesOf(made, positions).filter((move) => addresses([move]).every((at) => isPeg(at)));
  if (moves.length) addMoves(moves);
}

/** The moves that a gesture would make if it ended at that peg: those of the motif, or of what is pasted, at hand. */
export function ghostAt(peg: string): Move[] {
  if (!bench.doc) return [];
  if (bench.tool === "paste") return pastedAt(bench.doc, peg) ?? [];
  const motif = bench.tool === "motif" ? bench.doc.motifs.find((each) => each.name === bench.motif) : null;
  const use = motif && motifUseAt(bench.doc, motif, peg, bench.colour, bench.mirror);
  return use ? expand({ ...bench.doc, steps: [use] }).flat().filter((move) => move !== null) : [];
}

/** The move that laid a band, and where it comes from in the document that was looked at. */
export function layingMove(band: number | null): { step: number; path: string; origin: Origin } | null {
  const move = (bench.work.moves ?? []).find((each) => each.events.some((e) => e.type === "laid" && e.band === band));
  const origin = move && originOf(move.step);
  return origin ? { step: move.step, path: move.path, origin } : null;
}

/** Put the band at hand, or another one like it, so that its first peg is that one. */
function placeBand(peg: string, how: "move" | "copy"): void {
  const laid = layingMove(bench.band);
  if (!laid || !bench.doc || bench.doc !== bench.workedDoc) return;
  const old = expand(bench.doc)[laid.origin.index]?.[laid.origin.within];
  const put = old && moveTo(old, peg);
  if (!put || !addresses([put]).every(isPeg)) {
    bench.message = t("moved-off-rows");
    return;
  }
  const edit =
    how === "copy"
      ? insertStep(laid.origin.index + 1, put, t("edit-copy"))
      : changeMove(bench.doc, laid.origin, () => put, t("edit-move-band"));
  if (edit) bench.commit(edit);
  takeUp("point");
}

function movesOf(made: Gesture, positions: LoopPositions): readonly Move[] {
  const tool = bench.tool;
  const loops = (peg: string) => positions.stacks.get(peg)?.length ?? 0;
  switch (tool) {
    case "lay": {
      const { colour, turns, capTurns, twists, chain } = bench;
      const got = layBand(hand.lay, made, { colour, turns, capTurns, twists, chain });
      hand.lay = got.state;
      return got.moves ?? (got.move ? [got.move] : []);
    }
    case "hook":
    case "slide":
    case "transfer":
    case "lift": {
      const { from, loop } = hand.carry;
      const got = carryLoop(hand.carry, made, tool satisfies CarryWay, loops, from && usualTarget(positions, from, loop));
      const opens = tool !== "lift" || got.state.waits || bench.stackPeg !== null; // a loop that goes off at once needs no card
      if (opens && (got.state !== hand.carry || made.kind === "cancel")) bench.stackPeg = got.state.from; // a stack that was opened otherwise stays
      hand.carry = got.state;
      return got.move ? [got.move] : [];
    }
    case "bind":
    case "knot":
    case "clip": {
      const ends = looseEnds(positions);
      const taken = { colour: bench.colour, end: ends[0] ?? null, newEnd: freeName(ends) };
      const got = workOnePeg(hand.onePeg, made, tool satisfies OnePegWay, taken);
      hand.onePeg = got.state;
      if (tool === "bind" && made.kind === "press") bench.stackPeg = made.more ? made.peg : null; // which loops, is said in the stack
      return got.move ? [got.move] : [];
    }
    default:
      if (made.kind === "press") bench.stackPeg = bench.stackPeg === made.peg ? null : made.peg;
      if (made.kind === "cancel") [bench.stackPeg, bench.band, bench.snapped, bench.chosen] = [null, null, null, []];
      return [];
  }
}

/** Make a move at the moment shown: it goes into the document after the step that is shown. */
export function addMove(move: Move): void {
  addMoves([move]);
}

/** Make several moves as one edit. */
export function addMoves(moves: readonly Move[]): void {
  bench.message = "";
  const [first] = moves;
  if (first) bench.commitMoves(insertSteps(insertionIndex(), moves, labelOf(first)), moves, momentAfter(moves.length));
}

function labelOf(move: Move): string {
  return move.do === "place" || move.do === "wind" ? t("edit-lay") : t("edit-move", { what: t(wordKeyOf(move)) });
}

/** Lay what was copied, its first peg on that one. */
function pasteAt(peg: string): void {
  const moves = bench.doc && pastedAt(bench.doc, peg);
  if (!bench.doc || !moves?.length || !addresses(moves).every((at) => isPeg(at))) {
    bench.message = t("moved-off-rows");
    return;
  }
  bench.message = "";
  bench.ghost = [];
  bench.commitMoves(pasteEdit(bench.doc, insertionIndex(), moves, t("edit-paste")), moves, momentAfter(moves.length));
}

/** Work the motif at hand with its first peg on that one. */
function layMotif(peg: string): void {
  const motif = bench.doc?.motifs.find((each) => each.name === bench.motif);
  const use = bench.doc && motif && motifUseAt(bench.doc, motif, peg, bench.colour, bench.mirror);
  if (!use || !bench.doc) return;
  const count = expand({ ...bench.doc, steps: [use] }).flat().length;
  bench.commit(insertStep(insertionIndex(), use, t("edit-lay")), momentAfter(count));
}

function wordKeyOf(move: Move): string {
  return move.do === "turn" || move.do === "hang" || move.do === "extend" ? `do-${move.do}` : `tool-${move.do}`;
}

/** The last move before the moment shown, once more, one stride on; or to the end, as far as the pegs reach. */
export function repeatLast(toEnd = false): void {
  const moves = repeatedMoves(toEnd);
  if (moves.length) addMoves(moves);
  else if (moves !== NOTHING_BEFORE) bench.message = t(toEnd ? "no-way-on" : "moved-off-rows");
}

const NOTHING_BEFORE: Move[] = [];

/** The moves that it would make. */
export function repeatedMoves(toEnd: boolean): Move[] {
  if (!bench.doc) return NOTHING_BEFORE;
  const before = expand(bench.doc)
    .slice(0, insertionIndex())
    .flat()
    .filter((move) => move !== null);
  const last = before.at(-1);
  if (!last) return NOTHING_BEFORE;
  if (toEnd) return repeatToEnd(before.at(-2) ?? null, last, isPeg);
  const next = repeatedMove(before.at(-2) ?? null, last);
  return next && addresses([next]).every(isPeg) ? [next] : [];
}

export function isPeg(at: string): boolean {
  return bench.work.pegs?.some((peg) => peg[0] === at) ?? false;
}

/** The names of the ends that hang loose, to be clipped, extended or put on pegs; that of the last band is the last. */
export function looseEnds(positions: LoopPositions): string[] {
  const laid = bench.pending.flatMap((move) => (move.do === "bind" ? [move.end ?? "end"] : [])); // a quick hand clips before the server has answered
  return [...new Set([...[...positions.stacks.keys()].filter(isFreeEnd).map(endName), ...laid])];
}

function freeName(taken: readonly string[]): string {
  let name = "end";
  for (let k = 2; taken.includes(name); k++) name = `end-${k}`;
  return name;
}

/** Nothing was begun with the tool at hand, and nothing is to be told but what it is for. */
export function isIdle(): boolean {
  const taken = bench.tool === "motif" || bench.tool === "paste" || bench.tool === "move" || bench.tool === "copy" || bench.tool === "trace" || bench.chain || (bench.tool === "bind" && bench.stackPeg !== null);
  return !bench.message && !taken && !hand.lay.over.length && !hand.carry.from && !hand.onePeg.at.length;
}

/** What to do next, in a sentence. */
export function tipText(): string {
  if (bench.message) return bench.message;
  if (bench.tool === "lay" && hand.lay.over.length) return t("tip-lay-more", { pegs: hand.lay.over.join(", ") });
  if (hand.carry.from && isFreeEnd(hand.carry.from)) {
    const { to } = hand.carry;
    return to.length ? t("tip-put-more", { pegs: to.join(", ") }) : t("tip-put");
  }
  if (hand.carry.from && bench.tool === "lift") return t("tip-lift-on", { loop: hand.carry.loop, peg: hand.carry.from });
  if (hand.carry.from) {
    const usual = usualTarget(positionsNow(), hand.carry.from, hand.carry.loop);
    const tip = t("tip-hook-to", { loop: hand.carry.loop, peg: hand.carry.from });
    return usual ? `${tip} ${t("tip-usual", { peg: hand.carry.from, usual })}` : tip;
  }
  if (hand.onePeg.at.some((at) => /^[a-z]/.test(at))) return t("tip-end");
  if (bench.tool === "lay" && bench.chain) return t("tip-chain");
  if (bench.tool === "bind" && bench.stackPeg) return t("tip-bind-some");
  if (bench.tool === "transfer" && looseEnds(positionsNow()).length) return t("tip-transfer-end");
  if (bench.tool === "trace") return t(`tip-trace-${tracing.pressed.length + 1}`);
  if (bench.tool === "motif") return t("tip-motif", { name: bench.motif ?? "" });
  return t(`tip-${bench.tool}`);
}
