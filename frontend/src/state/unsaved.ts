/** What is not on the server's disk yet, kept by the browser: a studio that stops, or a page that is reloaded, loses no edit. */
import type { Doc } from "../document/pattern";

/** A document and the edition on the disk that it was made from. `sent` is an older one that was sent to be saved and not
 * answered for: it may be on the disk. */
export interface UnsavedPiece {
  doc: Doc;
  edition: string;
  sent?: Doc;
}

const PREFIX = "pegwright-unsaved:";

/** Keep a piece until it is saved. A browser that has no room for it keeps what it can: nothing else depends on it. */
export function keepUnsaved(name: string, piece: UnsavedPiece): void {
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(piece));
  } catch {
    localStorage.removeItem(PREFIX + name); // an older state of it would be worse than none
  }
}

export function dropUnsaved(name: string): void {
  localStorage.removeItem(PREFIX + name);
}

export function unsavedOf(name: string): UnsavedPiece | null {
  try {
    const kept = JSON.parse(localStorage.getItem(PREFIX + name) ?? "null") as UnsavedPiece | null;
    return kept && typeof kept.edition === "string" && Array.isArray(kept.doc?.steps) ? kept : null;
  } catch {
    return null;
  }
}

/** The names of all pieces that have edits which are not saved. */
export function unsavedNames(): string[] {
  return Object.keys(localStorage).flatMap((key) => (key.startsWith(PREFIX) ? [key.slice(PREFIX.length)] : [])).sort();
}
