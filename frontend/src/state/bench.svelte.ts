/** The bench: the piece at hand, what the server says of it, and what the maker is looking at.
 *
 * Everything the views show is read from here, and every change goes through `commit`. */
import type { Edit } from "../document/edit";
import type { Mirror, Run } from "../document/runs";
import { docOf, type Doc, type Move } from "../document/pattern";
import { EMPTY_HISTORY, commit as commitTo, redo as redoIn, undo as undoIn, type History } from "../document/undo";
import { anyClose } from "../kernels/colour_distance";
import type { Finding, Snapped, WorkResponse } from "../schema/answers";
import { RefusedError } from "../wire/client";
import { shareUnchanged } from "../wire/share";
import { spoken, t as words } from "../words/words.svelte";
import { connection } from "./connection";
import { refusalText } from "./refusal_text";
import { Saving } from "./saving.svelte";
import { historyOf, keepHistory } from "./kept_histories";
import { dropUnsaved, unsavedOf } from "./unsaved";

export type ToolName = "point" | "lay" | "hook" | "lift" | "transfer" | "slide" | "bind" | "clip" | "knot" | "snap" | "motif" | "move" | "copy" | "paste" | "trace";

/** What is found of any piece that is still being made: no fault of the maker's yet. */
export const UNFINISHED: ReadonlySet<string> = new Set(["band-falls", "band-not-worked", "colour-unused"]);
const UNREAD: WorkResponse = { readable: false };
const RETRY_AFTER_MS = 1000;
/** So many answers are remembered, for the edits that were made last. */
const MOST_ANSWERS = 20;
export const LAST_MOMENT = Number.MAX_SAFE_INTEGER;
const NOTHING_BEGUN = { run: null, marking: false, snapped: null, slipped: null, ghost: [] } satisfies Partial<Bench>;

/** What the maker has taken up and pointed at; begun anew with every piece. */
function freshSession(doc: Doc) {
  return {
    moment: LAST_MOMENT,
    tool: (doc.steps.length ? "point" : "lay") as ToolName,
    colour: doc.colours[0]?.letter ?? "A",
    stackPeg: null,
    band: null,
    chosen: [],
    ghost: [],
    motif: null,
    mirror: [],
    several: false,
    marking: false,
    lastPeg: "",
    run: null,
    snapped: null,
    slipped: null,
    lettered: null,
    charting: false,
    message: "",
  } satisfies Partial<Bench>;
}

/** A document as it is shown, and what the server said of it. */
interface Shown {
  doc: Doc;
  work: WorkResponse;
  workedDoc: Doc | null;
  moment: number;
  language: string;
}

export class Bench {
  name = $state<string | null>(null);
  doc = $state.raw<Doc | null>(null);
  history = $state.raw<History>(EMPTY_HISTORY);
  /** The server's last answer, and the document that it speaks of. */
  work = $state.raw<WorkResponse>(UNREAD);
  workedDoc = $state.raw<Doc | null>(null);
  /** Moves made that `work` does not know of yet; they are drawn at once. */
  pending = $state.raw<Move[]>([]);
  working = $state(false);
  /** Moves made at the moment that is shown. */
  moment = $state(0);
  tool = $state<ToolName>("lay");
  colour = $state("A");
  /** How often the next band goes round each peg, how often a cap is wound, half-twists, and whether a drag lays a
   * band for every leg of its way. */
  turns = $state(1);
  capTurns = $state(3);
  twists = $state(0);
  chain = $state(false);
  /** The peg whose stack is open beside it. */
  stackPeg = $state<string | null>(null);
  /** The band that is pointed at. */
  band = $state<number | null>(null);
  /** Bands that are chosen together. */
  chosen = $state.raw<readonly number[]>([]);
  /** Moves that would be made by what the hand is about to do, drawn faintly. */
  ghost = $state.raw<readonly Move[]>([]);
  /** The motif that the hand lays, and how it is mirrored. */
  motif = $state<string | null>(null);
  mirror = $state.raw<readonly Mirror[]>([]);
  /** A press takes in one more peg and waits for others, as with Shift. */
  several = $state(false);
  /** A press on a step marks all from the one shown to it, as with Shift. */
  marking = $state(false);
  /** The peg that was pressed or reached last. */
  lastPeg = $state("");
  /** Steps of the document that are marked, to be worked with together. */
  run = $state.raw<Run | null>(null);
  snapped = $state.raw<Snapped | null>(null);
  /** The bands that fall in the end after a mistake of the rehearsal, shown on the loom; null shows none. */
  slipped = $state.raw<readonly number[] | null>(null);
  /** Bands wear their letters on the board; null leaves it to how close their colours are. */
  lettered = $state<boolean | null>(null);
  /** What the maker is told in place of the tool's tip. */
  message = $state("");
  /** The chart is shown in place of the bench. */
  charting = $state(false);
  /** Edits that were not saved the last time were put back. */
  recovered = $state(false);
  /** What is at hand while a proposal is shown in its place; null while none is. */
  setAside = $state.raw<Shown | null>(null);
  /** The piece as it is kept, whatever is shown. */
  readonly ownDoc = $derived(this.setAside?.doc ?? this.doc);
  /** Of the moves that the server has answered for, so many are shown. */
  readonly shownMoves = $derived(Math.min(this.moment, this.work.moves?.length ?? 0));
  readonly saving = new Saving(this);
  readonly showLetters = $derived(this.lettered ?? anyClose((this.doc?.colours ?? []).map((colour) => colour.hex)));
  /** Whether a clip or a knot closes the piece. */
  readonly closed = $derived(this.work.moves?.some((move) => move.do === "clip" || move.do === "knot") ?? false);

  /** This page, among all that ask the server. */
  readonly page = crypto.randomUUID();
  #serial = 0;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #asking: AbortController | null = null;
  /** What the server said of the document to which an edit of the history leads back. */
  readonly #answers = new Map<Edit, { doc: Doc; work: WorkResponse; language: string }>();

  /** Open a piece at its end.
   * @throws RefusedError where the server does not hand it out. */
  async open(name: string): Promise<void> {
    const piece = await connection.wire.open(name);
    if (this.name !== name) await this.saving.now(); // what was made meanwhile belongs to the piece that was open till now
    const saved = docOf(piece.document as unknown as Doc);
    const kept = unsavedOf(name);
    const onDisk = kept && kept.edition !== piece.edition ? await this.saving.recognise(name, kept) : null;
    if (kept && onDisk?.doc === kept.doc) dropUnsaved(name); // it had been saved after all
    const unsaved = onDisk && kept ? (onDisk.doc === kept.doc ? null : { doc: kept.doc, edition: piece.edition }) : kept;
    const doc = unsaved?.doc ?? saved;
    this.saving.begin(saved, piece.edition);
    const history = unsaved ? EMPTY_HISTORY : historyOf(name, piece.edition);
    Object.assign(this, { name, doc, history, work: UNREAD, workedDoc: null, pending: [], recovered: false, setAside: null, ...freshSession(doc) });
    if (unsaved && unsaved.edition !== piece.edition) this.saving.state = "changed";
    else if (unsaved) {
      this.recovered = true;
      this.history = { undo: [{ label: words("edit-recovered"), ops: [{ op: "replace", path: "", value: saved }] }], redo: [] };
      this.saving.schedule();
    }
    await this.#ask();
  }

  /** Open a piece as it is on the disk; edits that were never saved are dropped. */
  async openSaved(name: string): Promise<void> {
    dropUnsaved(name);
    this.name = null; // what is at hand is not to be saved in its place
    await this.open(name);
  }

  /** Leave the piece for the shelf, saved. */
  async leave(): Promise<void> {
    this.dropProposal();
    await this.saving.now();
    this.keepHistory();
    clearTimeout(this.#retry);
    Object.assign(this, { name: null, doc: null, recovered: false, work: UNREAD, workedDoc: null, stackPeg: null, band: null });
  }

  /** Keep what can be undone for when the piece is opened again. */
  keepHistory(): void {
    if (this.name && this.saving.isSaved) keepHistory(this.name, this.saving.edition, this.history);
  }

  /** Make an edit. `moment` is the moment to show once it has been worked; without it the moment stays. */
  commit(edit: Edit, moment?: number): void {
    if (!this.doc) return;
    this.takeProposal(); // whoever goes on with what is shown has taken it
    const made = commitTo(this.doc, this.history, edit);
    this.#rememberAnswer(made.history.undo.at(-1));
    this.#show(made.doc, made.history, moment);
  }

  /** Make an edit that adds moves, and draw them before the server has answered. */
  commitMoves(edit: Edit, moves: readonly Move[], moment: number): void {
    this.pending = [...this.pending, ...moves];
    this.commit(edit, moment);
  }

  undo(): void {
    if (this.setAside) return this.dropProposal();
    this.pending = [];
    const made = this.doc && undoIn(this.doc, this.history);
    if (!made) return;
    this.#rememberAnswer(made.history.redo.at(-1));
    this.#showAgain(made.edit, made.doc, made.history);
  }

  redo(): void {
    this.dropProposal();
    const made = this.doc && redoIn(this.doc, this.history);
    if (!made) return;
    this.#rememberAnswer(made.history.undo.at(-1));
    this.#showAgain(made.edit, made.doc, made.history);
  }

  /** Show a proposal in place of the piece. Nothing is saved of it until it is taken. */
  showProposal(doc: Doc): void {
    const { doc: own, work, workedDoc, moment } = this;
    if (!own) return;
    this.setAside ??= { doc: own, work, workedDoc, moment, language: spoken.language };
    Object.assign(this, { doc, pending: [], moment: LAST_MOMENT, stackPeg: null, band: null, ...NOTHING_BEGUN });
    void this.#ask();
  }

  /** Show the piece itself again. */
  dropProposal(): void {
    const { setAside } = this;
    if (!setAside) return;
    this.#overtake();
    const { language, ...own } = setAside;
    Object.assign(this, { ...own, setAside: null, pending: [], ...NOTHING_BEGUN });
    if (this.workedDoc !== this.doc || language !== spoken.language) void this.#ask();
  }

  /** Make the proposal that is shown the piece: an edit like any other. */
  takeProposal(): void {
    const { doc, setAside, history } = this;
    if (!doc || !setAside) return;
    this.setAside = null;
    const made = commitTo(setAside.doc, history, { label: words("edit-order"), ops: [{ op: "replace", path: "", value: doc }] });
    const back = made.history.undo.at(-1);
    if (back && setAside.workedDoc === setAside.doc) this.#answers.set(back, setAside);
    Object.assign(this, { doc: made.doc, history: made.history });
    this.saving.schedule();
  }

  /** Keep the answer at hand for the edit that leads back to this document. */
  #rememberAnswer(back: Edit | undefined): void {
    if (!back || !this.doc || this.doc !== this.workedDoc) return;
    this.#answers.set(back, { doc: this.doc, work: this.work, language: spoken.language });
    for (const oldest of this.#answers.keys()) if (this.#answers.size > MOST_ANSWERS) this.#answers.delete(oldest);
  }

  /** Show a document that was there before: at once where its answer is remembered. */
  #showAgain(edit: Edit, doc: Doc, history: History): void {
    const answer = this.#answers.get(edit);
    if (answer?.language !== spoken.language) return this.#show(doc, history);
    this.#overtake();
    const atEnd = this.moment >= (this.work.moves?.length ?? 0);
    const last = answer.work.moves?.length ?? 0;
    Object.assign(this, { doc: answer.doc, workedDoc: answer.doc, work: answer.work, history });
    Object.assign(this, { ...NOTHING_BEGUN, moment: atEnd ? last : Math.min(this.moment, last) });
    this.saving.schedule();
  }

  /** Whatever is still being asked counts no more. */
  #overtake(): void {
    this.#asking?.abort();
    clearTimeout(this.#retry);
    this.#serial++;
    this.working = false;
  }

  /** Carry out the fix of a finding. It speaks of the document that was worked, so only of that one. */
  mend(finding: Finding): void {
    if (!finding.fix || this.doc !== this.workedDoc) return;
    this.commit({ label: finding.fix.label, ops: finding.fix.patch as unknown as Edit["ops"] });
  }

  /** Ask for the same once more, in the language that is set by now. */
  workAgain(): void {
    if (this.workedDoc) void this.#ask();
  }

  /** Lay the piece at hand on the shelf under another name and go on with that. */
  async keepAsCopy(): Promise<void> {
    this.dropProposal();
    if (!this.doc) return;
    const doc = this.doc;
    const saved = await connection.wire.add(doc);
    if (this.name) dropUnsaved(this.name);
    this.name = saved.name;
    this.saving.begin(doc, saved.edition);
  }

  #show(doc: Doc, history: History, moment?: number): void {
    const atEnd = this.moment >= (this.work.moves?.length ?? 0);
    Object.assign(this, { doc, history, ...NOTHING_BEGUN });
    if (moment !== undefined) this.moment = moment;
    else if (atEnd) this.moment = LAST_MOMENT;
    this.saving.schedule();
    void this.#ask();
  }

  /** Ask what the server makes of the document. The newest question counts. */
  async #ask(): Promise<void> {
    const doc = this.doc;
    if (!doc) return;
    clearTimeout(this.#retry);
    this.#asking?.abort();
    this.#asking = new AbortController();
    const mine = ++this.#serial;
    this.working = true;
    try {
      const work = await connection.wire.work(doc, this.page, mine, this.#asking.signal);
      if (mine !== this.#serial) return;
      this.work = shareUnchanged(this.work, work);
      this.pending = [];
      this.workedDoc = doc;
      this.moment = Math.min(this.moment, work.moves?.length ?? 0);
      this.chosen = this.chosen.filter((band) => band <= (work.colours?.length ?? 0));
      this.working = false;
      if (this.saving.isSaved && this.saving.state !== "changed") this.saving.state = "saved";
    } catch (error) {
      if (mine !== this.#serial) return;
      const away = error instanceof RefusedError && (error.status === 0 || error.status === 401);
      this.working = away; // it is asked again, so the answer is still awaited
      if (!(error instanceof RefusedError)) throw error;
      if (away) {
        if (this.saving.state !== "changed") this.saving.state = error.status ? "locked" : "lost";
        this.#retry = setTimeout(() => void this.#ask(), RETRY_AFTER_MS); // the verdict is to be of the last edit
      } else this.message = refusalText(error);
    }
  }
}

export const bench = new Bench();
