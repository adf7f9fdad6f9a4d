/** The piece off the loom: asked for when the maker pauses, dropped as soon as the design changes. */
import { expand } from "../document/expand";
import type { Doc } from "../document/pattern";
import type { AtRest, Measured } from "../wire/client";
import { bench, isClosed } from "./bench.svelte";
import { Task } from "./task.svelte";

const PAUSE_MS = 900;
/** Larger pieces are settled when the maker asks for it. */
const MOST_UNASKED = 400;
const MOST_MEASURED_UNASKED = 120;

class Rest {
  task = new Task();
  measuring = new Task();
  shape = $state.raw<AtRest | null>(null);
  /** The letter of each band of `shape`, as it was when it was asked for. */
  letters = $state.raw<readonly string[]>([]);
  /** What `shape` was made from, and what it would have to be made from now. */
  made = $state("");
  wanted = $state("");
  measured = $state.raw<Measured | null>(null);
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

/** Heed that the piece at hand was worked anew. */
export function heed(): void {
  const doc = bench.seenDoc;
  if (!doc || !bench.name) {
    forget();
    return;
  }
  const wanted = shapeKey(doc);
  if (wanted === rest.wanted) return;
  drop();
  rest.wanted = wanted;
  const bands = bench.seen.colours?.length ?? 0;
  if (rest.made !== wanted && isClosed() && bands && bands <= MOST_UNASKED) timer = setTimeout(settle, PAUSE_MS);
}

/** Let go of the piece, and end what is under way for it. */
export function forget(): void {
  drop();
  Object.assign(rest, { shape: null, letters: [], made: "", wanted: "" });
}

function drop(): void {
  clearTimeout(timer);
  rest.task.end();
  rest.measuring.end();
  rest.measured = null;
}

/** Bring the piece to rest now. */
export async function settle(): Promise<void> {
  clearTimeout(timer);
  const wanted = rest.wanted;
  const letters = bench.seen.colours ?? [];
  const told = await rest.task.run({ do: "rest" });
  if (told?.state !== "done") return;
  const shape = JSON.parse(await (await rest.task.file("rest.json")).text()) as AtRest;
  if (rest.wanted !== wanted) return;
  Object.assign(rest, { shape, letters, made: wanted });
  if (letters.length <= MOST_MEASURED_UNASKED) await measure();
}

/** Measure how it stretches. */
export async function measure(): Promise<void> {
  const wanted = rest.wanted;
  const told = await rest.measuring.run({ do: "measure" });
  if (told?.state !== "done") return;
  const measured = JSON.parse(await (await rest.measuring.file("measured.json")).text()) as Measured;
  if (rest.wanted === wanted) rest.measured = measured;
}
