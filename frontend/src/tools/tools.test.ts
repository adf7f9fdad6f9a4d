import { describe, expect, it } from "vitest";
import { carryLoop, NOTHING_CARRIED, type CarryState, type CarryWay } from "./carry";
import type { Gesture } from "./gesture";
import { layBand, NOTHING_LAID, type BandChoice, type LayState } from "./lay";
import { workOnePeg, NO_PEG, type OnePegWay } from "./one_peg";

const press = (peg: string, more = false): Gesture => ({ kind: "press", peg, more });
const enter = (peg: string): Gesture => ({ kind: "enter", peg });
const release = (peg: string | null = null): Gesture => ({ kind: "release", peg });
const DONE: Gesture = { kind: "done" };
const CANCEL: Gesture = { kind: "cancel" };

function laying(gestures: Gesture[], band: Partial<BandChoice> = {}) {
  let state: LayState = NOTHING_LAID;
  const moves = [];
  for (const gesture of gestures) {
    const answer = layBand(state, gesture, { colour: "A", turns: 1, capTurns: 3, twists: 0, chain: false, ...band });
    state = answer.state;
    if (answer.move) moves.push(answer.move);
    moves.push(...(answer.moves ?? []));
  }
  return { state, moves };
}

describe("laying a band", () => {
  it("a drag from peg to peg lays it over all that it passes", () => {
    const { moves, state } = laying([press("A1"), enter("A2"), enter("A1"), enter("B2"), release("B2")]);
    expect(moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2", "B2"] }]);
    expect(state).toStrictEqual(NOTHING_LAID);
  });

  it("one press and then another lays it over two", () => {
    const { moves } = laying([press("A1"), release("A1"), press("A2"), release("A2")]);
    expect(moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2"] }]);
  });

  it("with Shift it waits for more pegs until it is done", () => {
    const start = [press("A1"), release("A1"), press("A2", true), release("A2"), press("B2", true), release("B2")];
    expect(laying(start).moves).toStrictEqual([]);
    expect(laying([...start, DONE]).moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2", "B2"] }]);
    expect(laying([...start, press("C3")]).moves).toStrictEqual([
      { do: "place", colour: "A", over: ["A1", "A2", "B2", "C3"] },
    ]);
  });

  it("the same peg twice winds a cap", () => {
    const { moves } = laying([press("B2"), release("B2"), press("B2"), release("B2")], { colour: "R", capTurns: 2 });
    expect(moves).toStrictEqual([{ do: "wind", colour: "R", on: "B2", turns: 2 }]);
  });

  it("twists and turns go with each leg and each peg", () => {
    const { moves } = laying([press("A1"), enter("A2"), enter("A3"), release()], { turns: 2, twists: 1 });
    expect(moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2", "A3"], turns: [2, 2, 2], twists: [1, 1] }]);
  });

  it("a chain is a band for every leg, with the pegs that stand between", () => {
    const pairs = (...gestures: Gesture[]) => laying(gestures, { chain: true }).moves.map((move) => move.do === "place" && move.over.join(" "));
    expect(pairs(press("A1"), enter("A2"), enter("B2"), release())).toStrictEqual(["A1 A2", "A2 B2"]);
    expect(pairs(press("A4"), release("A4"), press("A1"))).toStrictEqual(["A4 A3", "A3 A2", "A2 A1"]);
    expect(pairs(press("A1"), release("A1"), press("C1"))).toStrictEqual(["A1 B1", "B1 C1"]);
    expect(pairs(press("A1"), release("A1"), press("B3"))).toStrictEqual(["A1 B3"]);
  });

  it("Escape, or done with one peg, lays nothing", () => {
    expect(laying([press("A1"), release("A1"), CANCEL])).toStrictEqual({ state: NOTHING_LAID, moves: [] });
    expect(laying([press("A1"), release("A1"), DONE])).toStrictEqual({ state: NOTHING_LAID, moves: [] });
    expect(laying([enter("A1"), release("A1")])).toStrictEqual({ state: NOTHING_LAID, moves: [] });
  });
});

function carrying(way: CarryWay, gestures: Gesture[], loops = 3) {
  let state: CarryState = NOTHING_CARRIED;
  const moves = [];
  for (const gesture of gestures) {
    const answer = carryLoop(state, gesture, way, () => loops);
    state = answer.state;
    if (answer.move) moves.push(answer.move);
  }
  return { state, moves };
}

describe("carrying a loop", () => {
  it("hooks the lowest loop from one peg to the other", () => {
    expect(carrying("hook", [press("A2"), release("A2"), press("A1"), release("A1")]).moves).toStrictEqual([
      { do: "hook", from: "A2", to: "A1" },
    ]);
    expect(carrying("hook", [press("A2"), release("A1")]).moves).toStrictEqual([{ do: "hook", from: "A2", to: "A1" }]);
  });

  it("takes the loop that was chosen in the stack", () => {
    const gestures = [press("A2"), release("A2"), { kind: "loop", loop: 3 } as Gesture, press("A1")];
    expect(carrying("hook", gestures).moves).toStrictEqual([{ do: "hook", from: "A2", to: "A1", loop: 3 }]);
    expect(carrying("slide", gestures).moves).toStrictEqual([{ do: "slide", from: "A2", to: "A1", loop: 3 }]);
    const shallow = [...gestures.slice(0, 3), { kind: "through", loops: 1 } as Gesture, press("A1")];
    expect(carrying("hook", shallow).moves).toStrictEqual([{ do: "hook", from: "A2", to: "A1", loop: 3, through: 1 }]);
    expect(carrying("transfer", gestures).moves).toStrictEqual([{ do: "transfer", from: "A2", to: "A1" }]);
  });

  it("goes where it usually goes by the same peg once more", () => {
    const taken = carryLoop(NOTHING_CARRIED, press("A2"), "hook", () => 1).state;
    expect(carryLoop(taken, press("A2"), "hook", () => 1, "A1").move).toStrictEqual({ do: "hook", from: "A2", to: "A1" });
  });

  it("takes nothing from a bare peg, and puts nothing back where it was", () => {
    expect(carrying("hook", [press("A2"), release("A1")], 0)).toStrictEqual({ state: NOTHING_CARRIED, moves: [] });
    expect(carrying("hook", [press("A2"), release("A2"), press("A2")])).toStrictEqual({ state: NOTHING_CARRIED, moves: [] });
    expect(carrying("hook", [press("A2"), release("A2"), CANCEL])).toStrictEqual({ state: NOTHING_CARRIED, moves: [] });
  });
});

describe("moves at one peg", () => {
  const at = (way: OnePegWay, gestures: Gesture[], end: string | null = null, newEnd = "end") => {
    let state = NO_PEG;
    const moves = [];
    for (const gesture of gestures) {
      const answer = workOnePeg(state, gesture, way, { colour: "A", end, newEnd });
      state = answer.state;
      if (answer.move) moves.push(answer.move);
    }
    return moves;
  };

  it("a free end is put on a peg by the tool that transfers, and by no other", () => {
    const loops = () => 2;
    const moveMade = (way: "hook" | "transfer", from: string) =>
      carryLoop({ ...NOTHING_CARRIED, from }, press("A3"), way, loops).move;
    expect(moveMade("transfer", "end.0")).toStrictEqual({ do: "put", on: ["A3"] });
    expect(moveMade("transfer", "tail.2")).toStrictEqual({ do: "put", on: ["A3"], end: "tail" });
    expect(moveMade("hook", "end.0")).toBeUndefined();
  });

  it("with Shift a free end is shared among several pegs", () => {
    const from = [press("end.0"), release("end.0")];
    expect(carrying("transfer", [...from, press("A1", true), press("A1", true), press("B1")], 2).moves).toStrictEqual([{ do: "put", on: ["A1", "B1"] }]);
    expect(carrying("transfer", [...from, press("A1", true), press("B1", true), DONE], 2).moves).toStrictEqual([{ do: "put", on: ["A1", "B1"] }]);
    expect(carrying("transfer", [...from, press("A1", true), CANCEL, DONE], 2).moves).toStrictEqual([]);
    expect(carrying("transfer", [...from, DONE], 2).moves).toStrictEqual([]);
    expect(carrying("transfer", [press("A2"), release("A2"), press("A3", true)]).moves).toStrictEqual([{ do: "transfer", from: "A2", to: "A3" }]);
  });

  it("a loop is lifted off by one press, and on to the peg that it is dragged to", () => {
    expect(carrying("lift", [press("A1"), release("A1")]).moves).toStrictEqual([{ do: "lift", at: "A1" }]);
    expect(carrying("lift", [press("A1"), release("A1")], 0).moves).toStrictEqual([{ do: "lift", at: "A1" }]);
    expect(carrying("lift", [press("A1"), release("A2")]).moves).toStrictEqual([{ do: "lift", at: "A1", to: "A2" }]);
    expect(carrying("lift", [press("A1"), release(null), press("A3"), CANCEL])).toStrictEqual({ state: NOTHING_CARRIED, moves: [] });
  });

  it("with Shift a lifted loop waits for its peg, and may be another than the lowest", () => {
    const taken = [press("A1", true), release("A1"), { kind: "loop", loop: 2 } as Gesture];
    expect(carrying("lift", taken).moves).toStrictEqual([]);
    expect(carrying("lift", [...taken, press("B1", true)]).moves).toStrictEqual([{ do: "lift", at: "A1", loop: 2, to: "B1" }]);
    expect(carrying("lift", [...taken, press("A1")]).moves).toStrictEqual([{ do: "lift", at: "A1", loop: 2 }]);
    expect(carrying("lift", [...taken, press("end.0")])).toStrictEqual({ state: NOTHING_CARRIED, moves: [] });
  });

  it("a last band goes through all loops, or with Shift from the one that is said", () => {
    const from = (loops: number | null): Gesture => ({ kind: "catch", peg: "A1", loops });
    expect(at("bind", [press("A1", true)])).toStrictEqual([]);
    expect(at("bind", [press("A1", true), from(2)])).toStrictEqual([{ do: "bind", colour: "A", at: "A1", catch: 2 }]);
    expect(at("bind", [from(null)], null, "end-2")).toStrictEqual([{ do: "bind", colour: "A", end: "end-2", at: "A1" }]);
    expect(at("clip", [from(2)])).toStrictEqual([]);
  });

  it("bind, knot and clip each take one press", () => {
    expect(at("bind", [press("A1")])).toStrictEqual([{ do: "bind", colour: "A", at: "A1" }]);
    expect(at("knot", [press("A1")])).toStrictEqual([{ do: "knot", at: ["A1"] }]);
    expect(at("clip", [press("A1")])).toStrictEqual([{ do: "clip", at: ["A1"] }]);
  });

  it("a clip closes the free end with the peg", () => {
    expect(at("clip", [press("A9")], "end")).toStrictEqual([{ do: "clip", at: ["end", "A9"] }]);
  });

  it("with Shift a clip takes in several pegs", () => {
    expect(at("clip", [press("A1", true), press("B1", true), DONE])).toStrictEqual([{ do: "clip", at: ["A1", "B1"] }]);
    expect(at("clip", [press("A1", true), CANCEL, DONE])).toStrictEqual([]);
  });
});

it("a free end that is pressed waits for the peg that it is closed with", () => {
  const band = { colour: "A", end: "tail", newEnd: "end" };
  const first = workOnePeg(NO_PEG, press("tail.0"), "clip", band);
  expect(first).toStrictEqual({ state: { at: ["tail"] } });
  expect(workOnePeg(first.state, press("A13"), "clip", band).move).toStrictEqual({ do: "clip", at: ["tail", "A13"] });
  expect(workOnePeg(NO_PEG, press("A13"), "clip", band).move).toStrictEqual({ do: "clip", at: ["tail", "A13"] });
});
