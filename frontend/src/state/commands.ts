/** All that the bench can do, by name and key: one list for the search, the sheet of keys, and the keys themselves. */
import { bench, type ToolName } from "./bench.svelte";
import { hasCopied } from "./clipboard";
import { addMove, repeatLast, takeUp } from "./hand.svelte";
import { findOrders, mendPiece } from "./planning";
import { preferences } from "./preferences.svelte";
import { textOf } from "./document_text";
import { t } from "../words/words.svelte";

export interface Command {
  name: string;
  /** The key as it is written; empty for none. */
  keys: string;
  run: () => void;
  disabled?: boolean;
}

export const TOOL_KEYS: readonly (readonly [string, ToolName])[] = [
  ["V", "point"], ["L", "lay"], ["H", "hook"], ["O", "lift"], ["T", "transfer"], ["S", "slide"], ["B", "bind"], ["C", "clip"], ["K", "knot"], ["X", "snap"],
];

/** What the page around the loom does. */
export type PageAction = "lesson" | "variants" | "versions" | "listen" | "help" | "loom" | "steps" | "duplicate" | "download" | "share" | "chart" | "trace" | "whole" | "larger" | "smaller" | "across" | "copyChosen" | "removeChosen" | "tour";

const NAMES: Record<PageAction, string> = {
  lesson: "lesson", variants: "variants", versions: "versions", listen: "listen-back", help: "help", loom: "change-loom", steps: "with-steps", duplicate: "copy", download: "download", share: "share", chart: "chart", trace: "trace",
  whole: "whole", larger: "larger", smaller: "smaller", across: "across", copyChosen: "copy-chosen", removeChosen: "delete-chosen", tour: "tour",
};
const KEYS: Partial<Record<PageAction, string>> = { help: "?", steps: "W", larger: "+", smaller: "−", whole: "0", copyChosen: "Ctrl+C", removeChosen: "Del" };

export function listCommands(page: Partial<Record<PageAction, () => void>>): Command[] {
  const { history } = bench;
  const actions = Object.entries(page) as [PageAction, () => void][];
  return [
    ...TOOL_KEYS.map(([keys, tool]) => ({ name: t(`tool-${tool}`), keys, run: () => takeUp(tool) })),
    { name: t("do-again"), keys: "A", run: () => repeatLast() },
    { name: t("do-to-end"), keys: "Shift+A", run: () => repeatLast(true) },
    { name: t("do-turn"), keys: "R", run: () => addMove({ do: "turn" }) },
    { name: t("do-hang"), keys: "", run: () => addMove({ do: "hang", colour: bench.colour }) },
    { name: t("chain"), keys: "N", run: () => { takeUp("lay"); bench.chain = !bench.chain; } },
    { name: t("find-order"), keys: "F", run: () => void findOrders(), disabled: !bench.work.moves?.length },
    { name: t("mend-piece"), keys: "M", run: () => void mendPiece(), disabled: !bench.work.moves?.length || bench.work.holds === true },
    { name: t("undo"), keys: "Ctrl+Z", run: () => bench.undo(), disabled: !history.undo.length },
    { name: t("redo"), keys: "Ctrl+Shift+Z", run: () => bench.redo(), disabled: !history.redo.length },
    { name: t("help-save"), keys: "Ctrl+S", run: () => void bench.saving.now() },
    { name: t("paste"), keys: "Ctrl+V", run: () => takeUp("paste"), disabled: !hasCopied() },
    { name: t("letters"), keys: "", run: () => (bench.lettered = !bench.showLetters) },
    { name: t("left-handed"), keys: "", run: () => (preferences.left = !preferences.left) },
    ...(bench.doc?.colours ?? []).map(({ letter, name }, k) => ({ name: t("take-colour", { colour: `${letter} ${textOf(bench.doc, name)}` }), keys: k < 9 ? `${k + 1}` : "", run: () => (bench.colour = letter) })),
    ...(bench.doc?.motifs ?? []).map(({ name }) => ({ name: t("take-motif", { name }), keys: "", run: () => { takeUp("motif"); bench.motif = name; } })),
    ...actions.map(([action, run]) => ({ name: t(NAMES[action]), keys: KEYS[action] ?? "", run })),
  ];
}
