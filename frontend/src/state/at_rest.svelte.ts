/** The piece at rest off the loom: asked for when the maker pauses, dropped as soon as the design changes. */
import { expand } from "../document/expand";
import type { Doc } from "../document/pattern";
import type { AtRest, Lengths, Measured } from "../schema/answers";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";

const PAUSE_MS = 900;
/** Larger pieces are settled when the maker asks for it. */
const MOST_SETTLED_UNASKED = 400;
const MOST_MEASURED_UNASKED = 120;

class AtRestStore {
  readonly settling = new Job();
  readonly measuring = new Job();
  readonly lengthening = new Job();
  readonly closing = new Job();
  shape = $state.raw<AtRest | null>(null);
  /** The letter of each band of `shape`, as it was when it was asked for. */
  letters = $state.raw<readonly string[]>([]);
  /** The key of the document that `shape` was made from, and of the one at hand. */
  shapeKey = $state("");
  wantedKey = $state("");
  /** How `shape` stretches, and the lengths that it can be made in: kept as long as it is, asked for once. */
  #measured = $state.raw<Measured | null>(null);
  #lengths = $state.raw<Lengths | null>(null);
  /** The piece closed round a wrist, by the solver. */
  worn = $state.raw<{ girth: number; shape: AtRest } | null>(null);
  readonly stale = $derived(this.shape !== null && this.shapeKey !== this.wantedKey);
  readonly measured = $derived(this.stale ? null : this.#measured);
  readonly lengths = $derived(this.stale ? null : this.#lengths);
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** Follow the piece at hand, which was worked anew. */
  follow(): void {
    const doc = bench.workedDoc;
    if (!doc || !bench.name) {
      this.clear();
      return;
    }
    const wanted = keyOfShape(doc);
    if (wanted === this.wantedKey) return;
    this.#drop();
    this.wantedKey = wanted;
    const bands = bench.work.colours?.length ?? 0;
    if (!bench.closed || !bands) return;
    // A design that comes back, as by Undo, has its shape, but what was being measured of it was broken off.
    if (this.shapeKey !== wanted) {
      if (bands <= MOST_SETTLED_UNASKED) this.#timer = setTimeout(() => void this.settle(), PAUSE_MS);
    } else if (bands <= MOST_MEASURED_UNASKED) this.#timer = setTimeout(() => void this.measure(), PAUSE_MS);
  }

  /** Forget the piece, and end what is under way for it. */
  clear(): void {
    this.#drop();
    Object.assign(this, { shape: null, letters: [], shapeKey: "", wantedKey: "" });
    this.#measured = this.#lengths = null;
  }

  #drop(): void {
    clearTimeout(this.#timer);
    for (const job of [this.settling, this.measuring, this.lengthening, this.closing]) job.end();
    this.worn = null;
  }

  /** Bring the piece to rest now. */
  async settle(): Promise<void> {
    clearTimeout(this.#timer);
    const wanted = this.wantedKey;
    const letters = bench.work.colours ?? [];
    const status = await this.settling.run({ do: "rest" });
    if (status?.state !== "done") return;
    const shape = await this.settling.json<AtRest>("rest.json");
    if (this.wantedKey !== wanted) return;
    Object.assign(this, { shape, letters, shapeKey: wanted });
    this.#measured = this.#lengths = null;
    if (letters.length <= MOST_MEASURED_UNASKED) await this.measure();
  }

  /** Measure how it stretches, and then what other numbers of repeats would come to. */
  async measure(): Promise<void> {
    const wanted = this.wantedKey;
    if (!this.#measured) {
      const measuring = await this.measuring.run({ do: "measure" });
      if (measuring?.state !== "done") return;
      const measured = await this.measuring.json<Measured>("measured.json");
      if (this.wantedKey !== wanted) return;
      this.#measured = measured;
    }
    if (this.#lengths) return;
    const lengthening = await this.lengthening.run({ do: "lengthen" });
    if (lengthening?.state !== "done") return;
    const lengths = await this.lengthening.json<Lengths | null>("lengths.json");
    if (this.wantedKey === wanted) this.#lengths = lengths;
  }

  /** Close it round a wrist of that girth, in whole mm. Until that is done, and where it cannot be, the flat piece is bent. */
  async closeRound(girth: number): Promise<void> {
    const [wanted, girth_mm] = [this.wantedKey, Math.round(girth)];
    if (this.shapeKey !== wanted || this.worn?.girth === girth_mm) return;
    this.worn = null;
    const status = await this.closing.run({ do: "worn", girth_mm });
    if (status?.state !== "done") return;
    const shape = await this.closing.json<AtRest>("worn.json");
    if (this.wantedKey === wanted && shape.settled) this.worn = { girth: girth_mm, shape };
  }

  /** Nobody looks at it on the wrist any more. */
  stopClosing(): void {
    this.closing.end();
  }
}

/** All that bears on the shape. Another tint or letter of the same kind of band leaves it as it is. */
export function keyOfShape(doc: Doc): string {
  const kinds = new Map(doc.colours.map((colour) => [colour.letter, colour.band ?? "standard"]));
  const moves = expand(doc)
    .flat()
    .map((move) => (move && "colour" in move ? { ...move, colour: kinds.get(move.colour as string) ?? "" } : move));
  return JSON.stringify([doc.loom, doc.bands ?? [], moves], (name, value: unknown) => (name === "note" || name === "warning" ? undefined : value));
}

export const atRest = new AtRestStore();
