/** A step in the maker's words. */
import { expand } from "../document/expand";
import { docOf, type Doc, type Move } from "../document/pattern";
import type { WorkedMove } from "../schema/answers";
import { textOf } from "./document_text";
import { spoken, t } from "../words/words.svelte";

/** Every move of the document that is on the pegs, in order: the move of step n stands at n − 1. */
export function movesOf(doc: Doc): Move[] {
  return expand(doc)
    .flat()
    .filter((move) => move !== null);
}

/** What the maker does, in one line. Colours are said by letter and name. */
export function stepWords(move: Move | undefined, doc: Doc | null): string {
  const said = sayStep(move, doc);
  return spoken.language === "es" ? said.replace(/\b(de|a) el /g, (_, word) => (word === "de" ? "del " : "al ")) : said;
}

/** What each of the moves that were read from a text comes to, in one line; as the notation has it where no step of the
 * document stands for it. */
export function wordsOfRead(document: object | null, moves: readonly WorkedMove[]): string[] {
  const doc = document && docOf(document as unknown as Doc);
  const made = doc ? movesOf(doc) : [];
  return moves.map((move) => stepWords(made[move.step - 1], doc) || move.line);
}

/** Which of the loops it is about, where it is not all of them. */
function sayStep(move: Move | undefined, doc: Doc | null): string {
  let said = sayMove(move, doc);
  if (!move) return said;
  if ("catch" in move && move.catch) said = t("say-only-top", { said, count: move.catch });
  if ("through" in move && typeof move.through === "number") said = t("say-through", { said, count: move.through });
  if (move.do !== "transfer" && "together" in move && (move.together ?? 1) > 1) said = t("say-together", { said, count: move.together! });
  return said;
}

function sayMove(move: Move | undefined, doc: Doc | null): string {
  if (!move) return "";
  const colour = "colour" in move ? `${move.colour} ${textOf(doc, doc?.colours.find(({ letter }) => letter === move.colour)?.name ?? "")}`.trim() : "";
  switch (move.do) {
    case "place":
      return t("say-place", { colour, pegs: places(move.over), twisted: move.twists?.some(Boolean) ? "yes" : "no" });
    case "wind":
      return t("say-wind", { colour, peg: move.on, turns: move.turns ?? 3 });
    case "hook":
    case "slide":
      return t(`say-${move.do}`, { ...loopOf(move), from: place(move.from), to: place(move.to) });
    case "transfer":
      return t("say-transfer", { count: move.together ?? 1, from: place(move.from), to: place(move.to) });
    case "lift":
      return move.to
        ? t("say-lift-on", { ...loopOf(move), peg: place(move.at), to: place(move.to) })
        : t("say-lift", { ...loopOf(move), peg: place(move.at) });
    case "bind":
      return t("say-bind", { colour, peg: place(move.at) });
    case "put":
      return t("say-put", { pegs: places(move.on) });
    case "extend":
      return t("say-extend", { colour, count: move.bands });
    case "hang":
      return t("say-hang", { colour });
    case "clip":
    case "knot":
      return t(`say-${move.do}`, { pegs: places(move.at) });
    case "turn":
      return t("say-turn");
  }
}

/** Which loop: counted from the lowest, or, where the document counts from the top, from there (`top`). */
function loopOf({ loop = 1 }: { loop?: number }): { loop: number; top: number } {
  return { loop, top: loop < 0 ? -loop : 0 };
}

function place(holder: string): string {
  return /^[A-Z]/.test(holder) ? holder : holder === "hook" ? t("the-hook") : t("the-free-end");
}

function places(holders: readonly string[]): string {
  const all = holders.map(place);
  const last = all.pop() ?? "";
  return all.length ? t("and", { first: all.join(", "), last }) : last;
}
