/** Saving: every edit is in the browser's keeping at once, and on the server's disk a moment later; one save at a time.
 *
 * A studio that stops between writing and answering leaves the page in doubt. So what was sent and not answered for is
 * sent once more before anything newer: the server takes a document that it has already, and says its edition. */
import type { Doc } from "../document/pattern";
import { RefusedError } from "../wire/client";
import { connection } from "./connection";
import { dropUnsaved, keepUnsaved, type UnsavedPiece } from "./unsaved";

/** `lost`: the server does not answer. `failed`: it says why it could not write the file. `locked`: it was started again and does not know this page yet. `changed`: the
 * piece on the disk is another one than this was made from. */
export type SaveState = "saved" | "saving" | "lost" | "failed" | "locked" | "refused" | "changed";

const SAVE_AFTER_MS = 150;
const RETRY_AFTER_MS = 1000;

/** The piece to be saved, read at the moment of saving. */
export interface PieceAtHand {
  readonly name: string | null;
  readonly ownDoc: Doc | null;
}

export class Saving {
  state = $state<SaveState>("saved");
  /** Why the last save failed, as the server says it. */
  reason = $state("");
  readonly #piece: PieceAtHand;
  /** The version on the disk, as the server names it; a save that names another one is refused. */
  #edition = "";
  #savedDoc: Doc | null = null;
  /** Sent to be saved, and not answered for. */
  #sentDoc: Doc | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #underWay: Promise<void> = Promise.resolve();

  constructor(piece: PieceAtHand) {
    this.#piece = piece;
  }

  /** Note what is on the disk now. */
  begin(doc: Doc, edition: string): void {
    this.#savedDoc = doc;
    this.#sentDoc = null;
    this.#edition = edition;
    this.state = "saved";
  }

  /** Find out whether what was sent before the page went is what is on the disk now. Returns it, with its edition; null
   * where the piece was changed elsewhere.
   * @throws RefusedError where the server does not answer. */
  async recognise(name: string, unsaved: UnsavedPiece): Promise<{ doc: Doc; edition: string } | null> {
    for (const doc of unsaved.sent ? [unsaved.doc, unsaved.sent] : [unsaved.doc])
      try {
        return { doc, edition: (await connection.wire.save(name, doc, unsaved.edition)).edition };
      } catch (error) {
        if (!(error instanceof RefusedError) || error.status === 0 || error.status === 401) throw error;
      }
    return null;
  }

  /** Save soon. Counted from the first edit: a busy hand does not put it off. */
  schedule(): void {
    const { ownDoc: doc, name } = this.#piece;
    if (name && doc) this.#keep(name, doc);
    if (this.state === "changed") return;
    if (this.state === "saved") this.state = "saving"; // any other trouble lasts until a save goes through
    this.#timer ??= setTimeout(() => void this.now(), SAVE_AFTER_MS);
  }

  /** Save what is not saved yet. */
  now(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#underWay = this.#underWay.then(() => this.#save());
    return this.#underWay;
  }

  async #save(): Promise<void> {
    const { ownDoc: doc, name } = this.#piece;
    if (!doc || !name || doc === this.#savedDoc || this.state === "changed") return;
    const next = (this.#sentDoc ??= doc);
    try {
      this.#edition = (await connection.wire.save(name, next, this.#edition)).edition;
      this.#savedDoc = next;
      this.#sentDoc = null;
      this.#settle(name);
    } catch (error) {
      const status = error instanceof RefusedError ? error.status : 0;
      if (status === 409) this.state = "changed";
      else if (status === 422) {
        this.state = "refused";
        this.#sentDoc = null; // it is not on the disk, and never will be
      } else {
        this.state = status === 401 ? "locked" : status ? "failed" : "lost";
        if (error instanceof RefusedError) this.reason = error.message;
        this.#timer ??= setTimeout(() => void this.now(), RETRY_AFTER_MS);
      }
    }
  }

  /** A save went through; edits may have been made meanwhile. */
  #settle(name: string): void {
    const { ownDoc: doc } = this.#piece;
    const others = this.#piece.name !== name;
    if (others || doc === this.#savedDoc) {
      this.state = "saved";
      dropUnsaved(name);
    } else if (doc) {
      this.state = "saving";
      this.#keep(name, doc);
      this.#timer ??= setTimeout(() => void this.now(), SAVE_AFTER_MS);
    }
  }

  #keep(name: string, doc: Doc): void {
    const sent = this.#sentDoc;
    keepUnsaved(name, { doc, edition: this.#edition, ...(sent && sent !== doc ? { sent } : {}) });
  }

  /** The version on the disk. */
  get edition(): string {
    return this.#edition;
  }

  /** Whether all of the piece is on the disk. */
  get isSaved(): boolean {
    return this.#piece.ownDoc === null || this.#piece.ownDoc === this.#savedDoc;
  }
}
