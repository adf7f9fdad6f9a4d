/** What can be undone of a piece, kept while this window is open: it survives the shelf and a reload. */
import { EMPTY_HISTORY, type History } from "../document/undo";

const PREFIX = "pegwright-history:";
const MOST_EDITS = 100;
const MOST_BYTES = 400_000;

/** Keep the history of a piece whose version on the disk is that edition. One too large to be kept is dropped. */
export function keepHistory(name: string, edition: string, history: History): void {
  const recent = { undo: history.undo.slice(-MOST_EDITS), redo: history.redo.slice(-MOST_EDITS) };
  const text = JSON.stringify({ edition, history: recent });
  try {
    if (text.length > MOST_BYTES) sessionStorage.removeItem(PREFIX + name);
    else sessionStorage.setItem(PREFIX + name, text);
  } catch {
    sessionStorage.removeItem(PREFIX + name); // no room: an older history would not fit the document
  }
}

/** The history of a piece, if it was kept at that edition; else an empty one. */
export function historyOf(name: string, edition: string): History {
  try {
    const kept = JSON.parse(sessionStorage.getItem(PREFIX + name) ?? "null") as { edition: string; history: History } | null;
    return kept?.edition === edition ? kept.history : EMPTY_HISTORY;
  } catch {
    return EMPTY_HISTORY;
  }
}
