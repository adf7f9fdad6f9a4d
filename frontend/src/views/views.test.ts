// @vitest-environment jsdom
import { flushSync, mount, unmount, type Component } from "svelte";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Doc } from "../document/pattern";
import { positionsAfter } from "../kernels/loop_positions";
import type { Finding, ShelvedMotif, WorkResponse, WorkedMove } from "../schema/answers";
import { bench } from "../state/bench.svelte";
import { connection } from "../state/connection";
import { hand, takeUp } from "../state/hand.svelte";
import { pendingMoves } from "../state/pending";
import { stash } from "../state/stash.svelte";
import type { Wire } from "../wire/client";
import BandCard from "./BandCard.svelte";
import Findings from "./Findings.svelte";
import Glance from "./Glance.svelte";
import Motifs from "./Motifs.svelte";
import Side from "./Side.svelte";

/** Three bands on two pegs, laid one above the other; the line's answer as the server would give it. */
const COLOURS = [
  { letter: "A", name: "slate blue", hex: "#34506b" },
  { letter: "R", name: "buoy red", hex: "#b5382a" },
];
const doc = (): Doc =>
  ({
    pegwright: 2,
    title: "Neap",
    loom: { kind: "rows", rows: 1, pegs: 3 },
    colours: COLOURS,
    motifs: [],
    steps: ["A", "R", "A"].map((colour) => ({ do: "place", colour, over: ["A1", "A2"] })),
  }) as unknown as Doc;
const move = (k: number): WorkedMove =>
  ({
    step: k + 1,
    path: `/steps/${k}`,
    phase: "place",
    do: "place",
    line: "",
    note: "",
    motif: "",
    rounds: [],
    events: [{ type: "laid", band: k + 1, seats: [[[k + 1, 0], "A1"], [[k + 1, 1], "A2"]], twists: [], beneath: false }],
  }) as unknown as WorkedMove;
const clip = { ...move(3), do: "clip", events: [{ type: "fastened", kind: "clip", holders: ["A1"], caught: [] }] } as unknown as WorkedMove;
const finding = (code: string, severity: Finding["severity"], more: object = {}): Finding =>
  ({ code, severity, message: `about ${code}`, hint: "", place: {}, facts: {}, fix: null, ...more }) as unknown as Finding;

function lookAt(more: Partial<WorkResponse> = {}, moves: WorkedMove[] = [move(0), move(1), move(2)]): void {
  const own = doc();
  Object.assign(bench, {
    name: "neap", doc: own, workedDoc: own, history: { undo: [], redo: [] }, pending: [], moment: moves.length, band: null, stackPeg: null, snapped: null, tool: "point",
    work: { readable: true, pegs: [["A1", 0, 0, 90], ["A2", 0, 16, 90], ["A3", 0, 32, 90]], moves, colours: ["A", "R", "A"], findings: [], holds: false, falls: [], unproved: [], heaps: [], ...more } as unknown as WorkResponse,
  });
}

let shown: ReturnType<typeof mount> | null = null;
function show<Props extends Record<string, unknown>>(view: Component<Props>, props: Props = {} as Props): HTMLElement {
  shown = mount(view as Component<Record<string, unknown>>, { target: document.body, props });
  flushSync();
  return document.body;
}
const buttons = (): HTMLButtonElement[] => [...document.querySelectorAll("button")];
const press = (text: string): void => {
  const found = buttons().find((button) => `${button.ariaLabel ?? button.getAttribute("aria-label") ?? ""} ${button.textContent}`.includes(text));
  if (!found) throw new Error(`no button ${text}: ${buttons().map((each) => each.textContent?.trim()).join("|")}`);
  found.click();
  flushSync();
};
const text = (): string => document.body.textContent!.replace(/\s+/g, " ");

beforeEach(() => {
  connection.connect({ work: () => new Promise(() => undefined), save: () => new Promise(() => undefined) } as unknown as Wire);
  stash.content = null;
});
afterEach(() => {
  if (shown) void unmount(shown);
  shown = null;
  document.body.innerHTML = "";
});

describe("the card of a band", () => {
  it("recolours that band alone", () => {
    lookAt();
    bench.band = 2;
    show(BandCard);
    press("A slate blue");
    expect(bench.doc!.steps.map((step) => "colour" in step && step.colour)).toStrictEqual(["A", "A", "A"]);
  });

  it("takes the band out, and puts it down", () => {
    lookAt();
    bench.band = 2;
    show(BandCard);
    press("Take it out");
    expect(bench.doc!.steps).toHaveLength(2);
    expect(bench.band).toBeNull();
  });

  it("takes the band up to be moved", () => {
    lookAt();
    bench.band = 2;
    show(BandCard);
    press("Move it");
    expect([bench.tool, bench.band]).toStrictEqual(["move", 2]);
  });

  it("is not there while no band is pointed at", () => {
    lookAt();
    show(BandCard);
    expect(buttons()).toStrictEqual([]);
  });
});

describe("what was found", () => {
  it("stands with the gravest first, the like of it behind it, and those that are not told counted", () => {
    const notes = [finding("slack", "warning"), finding("slack", "warning"), finding("gone", "error")];
    lookAt({ findings: [...notes, finding("more-of-the-same", "note", { facts: { of: "slack", count: 7 } })] }, [move(0), clip]);
    show(Findings);
    expect([...document.querySelectorAll("b")].map((each) => each.textContent)).toStrictEqual(["fault", "look", "look"]);
    expect(document.querySelector("summary")!.textContent).toContain("8 more like it");
    expect(text()).not.toContain("more-of-the-same");
  });

  it("does not count against a piece that is being made what is not worked yet", () => {
    const unfinished = ["band-not-worked", "band-falls", "colour-unused"].map((code) => finding(code, "warning"));
    lookAt({ findings: unfinished });
    show(Findings);
    expect(text()).toContain("Nothing wrong was found.");
    lookAt({ findings: unfinished }, [move(0), clip]);
    flushSync();
    expect(text()).toContain("about band-not-worked");
  });

  it("carries out a fix with a press, as one edit that can be undone", () => {
    const fix = { label: "take the last band out", patch: [{ op: "remove", path: "/steps/2" }] };
    lookAt({ findings: [finding("band-too-many", "error", { fix })] });
    show(Findings);
    press("Mend it: take the last band out");
    expect(bench.doc!.steps).toHaveLength(2);
    expect(bench.history.undo.at(-1)?.label).toBe("take the last band out");
  });

  it("offers no fix of a document that has changed since", () => {
    const fix = { label: "take the last band out", patch: [{ op: "remove", path: "/steps/2" }] };
    lookAt({ findings: [finding("band-too-many", "error", { fix })] });
    show(Findings);
    bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: "Spring" }] });
    flushSync();
    expect(document.querySelector<HTMLButtonElement>(".mend")!.disabled).toBe(true);
  });

  it("sets what a piece takes against the stash", () => {
    stash.content = { stash: 1, bands: [{ colour: "Slate Blue", have: 1 }, { colour: "R", have: 5, band: "standard" }] };
    lookAt({ heaps: [{ letter: "A", name: "slate blue", band: "standard", count: 2 }, { letter: "R", name: "buoy red", band: "standard", count: 1 }] });
    show(Findings);
    expect(text()).toContain("slate blue: 2 bands · 1 short");
    expect(text()).toContain("buoy red: 1 band · 5 at hand");
  });
});

it("the steps have a move at once, before the server has answered for it", () => {
  lookAt({}, [move(0)]);
  bench.pending = [{ do: "wind", colour: "A", on: "A1" }];
  expect(pendingMoves().map((each) => [each.step, each.do])).toStrictEqual([[1, "place"], [2, "wind"]]);
});

describe("the stack from the side", () => {
  const open = () => {
    const moves = [move(0), move(1), move(2)];
    const look = (band: number) => ({ ...COLOURS[band === 2 ? 1 : 0]!, tint: "#000000", hatch: 0 });
    return show(Side, { peg: "A1", x: 0, y: 0, back: [0, 0], positions: positionsAfter(moves, 3), look });
  };

  it("shows the topmost loop first, numbered from the bottom", () => {
    lookAt();
    open();
    expect([...document.querySelectorAll("li b")].map((each) => each.textContent)).toStrictEqual(["3 A", "2 R", "1 A"]);
  });

  it("with the hook in hand, takes the loop that is pressed, whether or not the peg was pressed before", () => {
    lookAt();
    takeUp("hook");
    open();
    press("Loop 2");
    expect(hand.carry).toMatchObject({ from: "A1", loop: 2 });
  });

  it("with lifting in hand, lifts it", () => {
    lookAt();
    takeUp("lift");
    open();
    press("Loop 2");
    expect(bench.doc!.steps.at(-1)).toStrictEqual({ do: "lift", at: "A1", loop: 2 });
  });
});

describe("small pictures", () => {
  const glance = { pegs: [[0, 0], [0, 16], [16, 0]], bands: [{ tint: "#34506b", over: [0, 1] }], arrows: [[1, 2]] } as unknown as ShelvedMotif["glance"];

  it("draw every peg, band and arrow", () => {
    show(Glance, { glance });
    expect(document.querySelectorAll("circle")).toHaveLength(3);
    expect(document.querySelectorAll('path[stroke="#34506b"]')).toHaveLength(1);
    expect(document.querySelectorAll('path[fill="#a83f2a"]')).toHaveLength(1);
  });

  it("of motifs are found by their name or their piece's title", () => {
    const motif = (name: string, title: string) => ({ name, title, glance, piece: "", bands: 1, loom: {}, motifs: [], colours: [], slots: {} }) as unknown as ShelvedMotif;
    const motifs = [motif("outline", "Riding lights"), motif("light", "Riding lights"), motif("wave", "Neap")];
    const picked: string[] = [];
    const names = (query: string) => {
      show(Motifs, { motifs, query, onpick: (one: ShelvedMotif) => picked.push(one.name) });
      const found = [...document.querySelectorAll("li b")].map((each) => each.textContent);
      if (found.length === 1) press(found[0]!);
      void unmount(shown!);
      shown = null;
      return found;
    };
    expect(names("")).toStrictEqual(["outline", "light", "wave"]);
    expect(names(" LIGHTS ")).toStrictEqual(["outline", "light"]);
    expect(names("nea")).toStrictEqual(["wave"]);
    expect(names("buoy")).toStrictEqual([]);
    expect(picked).toStrictEqual(["wave"]);
  });
});
