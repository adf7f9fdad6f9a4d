/** The piece off the loom: asked for when the maker pauses, dropped as soon as the design changes. */
import { expand } from "../document/expand";
import type { Doc } from "../document/pattern";
import type { AtRest, Lengths, Measured } from "../wire/client";
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
  trying = new Task();
  /** The lengths that it can be made in. */
  lengths = $state.raw<Lengths | null>(null);
  wearing = new Task();
  /** The piece closed round a wrist, by the solver. */
  worn = $state.raw<{ girth: number; shape: AtRest } | null>(null);
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
  for (const task of [rest.measuring, rest.trying, rest.wearing]) task.end();
  rest.measured = rest.lengths = rest.worn = null;
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

/** Measure how it stretches, and then what other numbers of repeats would come to. */
export async function measure(): Promise<void> {
  const wanted = rest.wanted;
  const told = await rest.measuring.run({ do: "measure" });
  if (told?.state !== "done") return;
  const measured = JSON.parse(await (await rest.measuring.file("measured.json")).text()) as Measured;
  if (rest.wanted !== wanted) return;
  rest.measured = measured;
  const tried = await rest.trying.run({ do: "lengthen" });
  if (tried?.state !== "done") return;
  const lengths = JSON.parse(await (await rest.trying.file("lengths.json")).text()) as Lengths | null;
  if (rest.wanted === wanted) rest.lengths = lengths;
}

/** Close it round a wrist of that girth, in whole mm. Until that is done, and where it cannot be, the flat piece is bent. */
export async function wear(girth: number): Promise<void> {
  const [wanted, girth_mm] = [rest.wanted, Math.round(girth)];
  if (rest.made !== wanted || rest.worn?.girth === girth_mm) return;
  rest.worn = null;
  const told = await rest.wearing.run({ do: "worn", girth_mm });
  if (told?.state !== "done") return;
  const shape = JSON.parse(await (await rest.wearing.file("worn.json")).text()) as AtRest;
  if (rest.wanted === wanted && shape.settled) rest.worn = { girth: girth_mm, shape };
}

/** Nobody looks at it worn any more. */
export function takeOff(): void {
  rest.wearing.end();
}
