/** The bench: the piece at hand, what the line says of it, and what the maker is looking at.
 *
 * Everything the views show is read from here, and every change goes through `commit`. */
import type { Edit } from "../document/edit";
import { origins, type Mirror, type Origin, type Run } from "../document/edits";
import { docOf, type Doc, type Move } from "../document/pattern";
import { NO_PAST, commit as into, redo as forward, undo as back, type Past } from "../document/undo";
import { emptyLie, lieAfter, type Lie } from "../kernels/lie";
import { share } from "../wire/share";
import { Refused, type Finding, type Seen, type Snapped, type Wire } from "../wire/client";

export type ToolName = "point" | "lay" | "hook" | "lift" | "transfer" | "slide" | "bind" | "clip" | "knot" | "snap" | "motif" | "move" | "copy";
export type Saving = "saved" | "saving" | "lost" | "refused" | "changed";

const NOTHING: Seen = { readable: false };
const SAVE_AFTER_MS = 150;

class Bench {
  name = $state<string | null>(null);
  doc = $state.raw<Doc | null>(null);
  past = $state.raw<Past>(NO_PAST);
  seen = $state.raw<Seen>(NOTHING);
  /** The document that `seen` speaks of. */
  seenDoc = $state.raw<Doc | null>(null);
  /** Moves made that `seen` does not know of yet; they are drawn at once. */
  pending = $state.raw<Move[]>([]);
  looking = $state(false);
  /** Moves made at the moment that is shown. */
  moment = $state(0);
  saving = $state<Saving>("saved");
  tool = $state<ToolName>("lay");
  colour = $state("A");
  turns = $state(1);
  twists = $state(0);
  /** The peg whose stack is open beside it. */
  peg = $state<string | null>(null);
  band = $state<number | null>(null);
  /** The motif that the hand lays, and how it is mirrored. */
  motif = $state<string | null>(null);
  mirror = $state.raw<readonly Mirror[]>([]);
  /** A press takes in one more peg and waits for others, as with Shift. */
  several = $state(false);
  /** A press on a step marks all from the one shown to it, as with Shift. */
  marking = $state(false);
  /** The peg that was pressed or reached last. */
  at = $state("");
  /** Steps of the document that are marked, to be worked with together. */
  run = $state.raw<Run | null>(null);
  snapped = $state.raw<Snapped | null>(null);
  /** The bands that fall in the end after a slip of the rehearsal, shown on the loom; null shows none. */
  slipped = $state.raw<readonly number[] | null>(null);
  said = $state("");
}

export const bench = new Bench();

const page = crypto.randomUUID();
let wire: Wire;
let edition = "";
let serial = 0;
let asked: AbortController | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;
let savedDoc: Doc | null = null;
let underWay: Promise<void> = Promise.resolve();

export function useWire(given: Wire): void {
  wire = given;
}

/** Open a piece at its end. Raises what the wire raises. */
export async function open(name: string): Promise<void> {
  const piece = await wire.open(name);
  if (bench.name !== name) await saveNow(); // what was made meanwhile belongs to the piece that was open till now
  edition = piece.edition;
  const doc = docOf(piece.document as unknown as Doc);
  savedDoc = doc;
  Object.assign(bench, {
    name,
    doc,
    past: NO_PAST,
    seen: NOTHING,
    seenDoc: null,
    pending: [],
    moment: Number.MAX_SAFE_INTEGER,
    saving: "saved",
    tool: doc.steps.length ? "point" : "lay",
    colour: doc.colours[0]?.letter ?? "A",
    peg: null,
    band: null,
    motif: null,
    mirror: [],
    several: false,
    marking: false,
    at: "",
    run: null,
    snapped: null,
    slipped: null,
    said: "",
  } satisfies Partial<Bench>);
  await look();
}

/** Leave the piece for the shelf, saved. */
export async function leave(): Promise<void> {
  await saveNow();
  Object.assign(bench, { name: null, doc: null, seen: NOTHING, seenDoc: null, peg: null, band: null });
}

/** Make an edit. `moment` is the moment to show once it has been worked; without it the moment stays. */
export function commit(edit: Edit, moment?: number): void {
  if (!bench.doc) return;
  const made = into(bench.doc, bench.past, edit);
  show(made.doc, made.past, moment);
}

/** Make an edit that adds moves, and draw them before the line has answered. */
export function commitMoves(edit: Edit, moves: readonly Move[], moment: number): void {
  bench.pending = [...bench.pending, ...moves];
  commit(edit, moment);
}

export function undo(): void {
  bench.pending = [];
  const made = bench.doc && back(bench.doc, bench.past);
  if (made) show(made.doc, made.past);
}

export function redo(): void {
  const made = bench.doc && forward(bench.doc, bench.past);
  if (made) show(made.doc, made.past);
}

function show(doc: Doc, past: Past, moment?: number): void {
  const atEnd = bench.moment >= (bench.seen.moves?.length ?? 0);
  bench.doc = doc;
  bench.past = past;
  bench.run = null;
  bench.marking = false;
  bench.snapped = bench.slipped = null;
  if (moment !== undefined) bench.moment = moment;
  else if (atEnd) bench.moment = Number.MAX_SAFE_INTEGER;
  if (bench.saving !== "changed") {
    bench.saving = "saving";
    timer ??= setTimeout(saveNow, SAVE_AFTER_MS); // counted from the first edit: a busy hand does not put it off
  }
  void look();
}

/** Ask what the line makes of the document. The newest question counts. */
async function look(): Promise<void> {
  const doc = bench.doc;
  if (!doc) return;
  asked?.abort();
  asked = new AbortController();
  const mine = ++serial;
  bench.looking = true;
  try {
    const seen = await wire.work(doc, page, mine, asked.signal);
    if (mine !== serial) return;
    bench.seen = share(bench.seen, seen);
    bench.pending = [];
    bench.seenDoc = doc;
    bench.moment = Math.min(bench.moment, seen.moves?.length ?? 0);
    bench.looking = false;
  } catch (error) {
    if (mine !== serial) return;
    bench.looking = false;
    if (!(error instanceof Refused)) throw error;
    if (error.status === 0) bench.saving = "lost";
    else bench.said = error.message;
  }
}

/** Ask for the same once more, in the language that is set by now. */
export function reword(): void {
  if (bench.seenDoc) void look();
}

/** Save what is not saved yet; one save at a time. */
export function saveNow(): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  underWay = underWay.then(async () => {
    const { doc, name } = bench;
    if (!doc || !name || doc === savedDoc || bench.saving === "changed") return;
    try {
      edition = (await wire.save(name, doc, edition)).edition;
      savedDoc = doc;
      bench.saving = bench.doc === doc ? "saved" : "saving";
      if (bench.doc !== doc) timer ??= setTimeout(saveNow, SAVE_AFTER_MS);
    } catch (error) {
      if (error instanceof Refused && error.status === 409) bench.saving = "changed";
      else if (error instanceof Refused && error.status === 422) bench.saving = "refused";
      else {
        bench.saving = "lost";
        timer ??= setTimeout(saveNow, 1000);
      }
    }
  });
  return underWay;
}

/** Whether all is safe on the disk. */
export function isSafe(): boolean {
  return bench.doc === null || bench.doc === savedDoc;
}

/** Lay the piece at hand on the shelf under another name and go on with that. */
export async function keepMine(): Promise<void> {
  if (!bench.doc) return;
  const saved = await wire.add(bench.doc);
  edition = saved.edition;
  savedDoc = bench.doc;
  bench.name = saved.name;
  bench.saving = "saved";
}

const SNAP_AFTER_MS = 70;
let snapping: ReturnType<typeof setTimeout> | undefined;
let snaps = { doc: null as Doc | null, known: new Map<number, Snapped>() };

/** Say what falls if a band snaps; `null` says nothing any more. */
export async function snap(band: number | null): Promise<void> {
  clearTimeout(snapping);
  bench.band = band;
  const { doc } = bench;
  if (!doc || band === null) {
    bench.snapped = null;
    return;
  }
  if (snaps.doc !== doc) snaps = { doc, known: new Map() };
  const { known } = snaps;
  const told = known.get(band) ?? (await wire.snap(doc, band).catch(say));
  if (told) known.set(band, told);
  if (bench.doc === doc && bench.band === band && bench.tool === "snap") bench.snapped = told;
}

function say(error: unknown): null {
  if (error instanceof Refused && error.status) bench.said = error.message;
  return null;
}

/** The same for what is pointed at in passing. */
export function snapSoon(band: number | null): void {
  clearTimeout(snapping);
  if (band !== bench.band) snapping = setTimeout(() => void snap(band), SNAP_AFTER_MS);
}

export function wireNow(): Wire {
  return wire;
}

/** Carry out the fix of a finding. It speaks of the document that was looked at, so only of that one. */
export function mend(finding: Finding): void {
  if (!finding.fix || bench.doc !== bench.seenDoc) return;
  commit({ label: finding.fix.label, ops: finding.fix.patch as unknown as Edit["ops"] });
}

/** What is found of any piece that is still being made: no fault of the maker's yet. */
export const UNFINISHED: ReadonlySet<string> = new Set(["band-falls", "band-not-worked", "colour-unused"]);

export const isClosed = (): boolean => bench.seen.moves?.some((move) => move.do === "clip" || move.do === "knot") ?? false;

// --- what follows from it ------------------------------------------------------------------------------

/** Where every loop lies at the moment shown. */
export function lieNow(): Lie {
  return bench.seen.moves ? lieAfter(bench.seen.moves, bench.moment) : emptyLie();
}

/** Where a move (its number from 1) comes from in the document that was looked at. */
export function originOf(step: number): Origin | null {
  return bench.seenDoc ? (origins(bench.seenDoc)[step - 1] ?? null) : null;
}

/** The place among the document's steps where a new one goes: after the moment shown. */
export function insertAt(): number {
  const moves = bench.seen.moves ?? [];
  if (!bench.doc) return 0;
  if (bench.moment >= moves.length) return bench.doc.steps.length;
  const before = moves[bench.moment - 1];
  const origin = before ? originOf(before.step) : null;
  return origin ? origin.index + 1 : 0;
}

/** The moment after the step that stands at `insertAt`, and `count` moves more. */
export function momentAfter(count: number): number {
  const moves = bench.seen.moves ?? [];
  const index = insertAt();
  if (!bench.seenDoc) return count;
  const all = origins(bench.seenDoc);
  let done = 0;
  for (const move of moves) if ((all[move.step - 1]?.index ?? 0) < index) done++;
  return done + count;
}

