/** Undo and redo without limit, as two stacks of edits. */
import { apply, type Edit } from "./edit";

export interface Past {
  undo: Edit[];
  redo: Edit[];
}

export const NO_PAST: Past = { undo: [], redo: [] };

export function commit<T>(doc: T, past: Past, edit: Edit): { doc: T; past: Past } {
  const made = apply(doc, edit);
  return { doc: made.doc, past: { undo: [...past.undo, made.inverse], redo: [] } };
}

export function undo<T>(doc: T, past: Past): { doc: T; past: Past; edit: Edit } | null {
  const edit = past.undo.at(-1);
  if (!edit) return null;
  const made = apply(doc, edit);
  return { doc: made.doc, past: { undo: past.undo.slice(0, -1), redo: [...past.redo, made.inverse] }, edit };
}

export function redo<T>(doc: T, past: Past): { doc: T; past: Past; edit: Edit } | null {
  const edit = past.redo.at(-1);
  if (!edit) return null;
  const made = apply(doc, edit);
  return { doc: made.doc, past: { undo: [...past.undo, made.inverse], redo: past.redo.slice(0, -1) }, edit };
}
