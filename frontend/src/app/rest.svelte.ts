/** The piece off the loom: asked for when the maker pauses, dropped as soon as the design changes. */
import { expand } from "../document/expand";
import type { Doc } from "../document/pattern";
import type { AtRest } from "../wire/client";
import { bench } from "./bench.svelte";
import { Task } from "./task.svelte";

const PAUSE_MS = 900;
/** Larger pieces are settled when the maker asks for it. */
const MOST_UNASKED = 400;

class Rest {
  task = new Task();
  shape = $state.raw<AtRest | null>(null);
  /** The letter of each band of `shape`, as it was when it was asked for. */
  letters = $state.raw<readonly string[]>([]);
  /** What `shape` was made from, and what it would have to be made from now. */
  made = $state("");
  wanted = $state("");
  readonly stale = $derived(this.shape !== null && this.made !== this.wanted);
}

export const rest = new Rest();
let timer: ReturnType<typeof setTimeout> | undefined;

/** All that bears on the shape. Another tint or letter of the same kind of band leaves it as it is. */
export function shapeKey(doc: Doc): string {
  const kinds = new Map(doc.colours.map((colour) => [colour.letter, colour.band ?? "standard"]));
  const moves = expand(doc)
    .flat()
    .map((move) => (move && "colour" in move ? { ...move, colour: kinds.get(move.colour as string) ?? "" } : move));
  return JSON.stringify([doc.loom, doc.bands ?? [], moves], (name, value: unknown) => (name === "note" || name === "warning" ? undefined : value));
}

export const isClosed = (): boolean => bench.seen.moves?.some((move) => move.do === "clip" || move.do === "knot") ?? false;

/** Heed that the piece at hand was worked anew. */
export function heed(): void {
  const doc = bench.seenDoc;
  if (!doc || !bench.name) {
    clearTimeout(timer);
    rest.task.end();
    Object.assign(rest, { shape: null, letters: [], made: "", wanted: "" });
    return;
  }
  const wanted = shapeKey(doc);
  if (wanted === rest.wanted) return;
  clearTimeout(timer);
  rest.task.end();
  rest.wanted = wanted;
  const bands = bench.seen.colours?.length ?? 0;
  if (rest.made !== wanted && isClosed() && bands && bands <= MOST_UNASKED) timer = setTimeout(settle, PAUSE_MS);
}

/** Bring the piece to rest now. */
export async function settle(): Promise<void> {
  clearTimeout(timer);
  const wanted = rest.wanted;
  const letters = bench.seen.colours ?? [];
  const told = await rest.task.run({ do: "rest" });
  if (told?.state !== "done") return;
  const shape = JSON.parse(await (await rest.task.file("rest.json")).text()) as AtRest;
  if (rest.wanted === wanted) Object.assign(rest, { shape, letters, made: wanted });
}
