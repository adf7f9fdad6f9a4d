/** Undo and redo without limit, as two stacks of edits. */
import { apply, type Edit } from "./edit";

export interface History {
  undo: Edit[];
  redo: Edit[];
}

export const EMPTY_HISTORY: History = { undo: [], redo: [] };

export function commit<T>(doc: T, history: History, edit: Edit): { doc: T; history: History } {
  const applied = apply(doc, edit);
  return { doc: applied.doc, history: { undo: [...history.undo, applied.inverse], redo: [] } };
}

export function undo<T>(doc: T, history: History): { doc: T; history: History; edit: Edit } | null {
  const edit = history.undo.at(-1);
  if (!edit) return null;
  const applied = apply(doc, edit);
  return { doc: applied.doc, history: { undo: history.undo.slice(0, -1), redo: [...history.redo, applied.inverse] }, edit };
}

export function redo<T>(doc: T, history: History): { doc: T; history: History; edit: Edit } | null {
  const edit = history.redo.at(-1);
  if (!edit) return null;
  const applied = apply(doc, edit);
  return { doc: applied.doc, history: { undo: [...history.undo, applied.inverse], redo: history.redo.slice(0, -1) }, edit };
}
