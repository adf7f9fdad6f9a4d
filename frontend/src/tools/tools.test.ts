import { describe, expect, it } from "vitest";
import { carry, CARRY_IDLE, type Carry, type Way } from "./carry";
import type { Gesture } from "./gesture";
import { lay, LAY_IDLE, type Lay } from "./lay";
import { once, ONCE_IDLE, type OneWay } from "./once";

const press = (peg: string, more = false): Gesture => ({ kind: "press", peg, more });
const enter = (peg: string): Gesture => ({ kind: "enter", peg });
const release = (peg: string | null = null): Gesture => ({ kind: "release", peg });
const DONE: Gesture = { kind: "done" };
const CANCEL: Gesture = { kind: "cancel" };

function laying(gestures: Gesture[], band = { colour: "A", turns: 1, twists: 0 }) {
  let state: Lay = LAY_IDLE;
  const moves = [];
  for (const gesture of gestures) {
    const answer = lay(state, gesture, band);
    state = answer.state;
    if (answer.move) moves.push(answer.move);
  }
  return { state, moves };
}

describe("laying a band", () => {
  it("a drag from peg to peg lays it over all that it passes", () => {
    const { moves, state } = laying([press("A1"), enter("A2"), enter("A1"), enter("B2"), release("B2")]);
    expect(moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2", "B2"] }]);
    expect(state).toStrictEqual(LAY_IDLE);
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
    const { moves } = laying([press("B2"), release("B2"), press("B2"), release("B2")], { colour: "R", turns: 3, twists: 0 });
    expect(moves).toStrictEqual([{ do: "wind", colour: "R", on: "B2", turns: 3 }]);
  });

  it("twists and turns go with each leg and each peg", () => {
    const { moves } = laying([press("A1"), enter("A2"), enter("A3"), release()], { colour: "A", turns: 2, twists: 1 });
    expect(moves).toStrictEqual([{ do: "place", colour: "A", over: ["A1", "A2", "A3"], turns: [2, 2, 2], twists: [1, 1] }]);
  });

  it("Escape, or done with one peg, lays nothing", () => {
    expect(laying([press("A1"), release("A1"), CANCEL])).toStrictEqual({ state: LAY_IDLE, moves: [] });
    expect(laying([press("A1"), release("A1"), DONE])).toStrictEqual({ state: LAY_IDLE, moves: [] });
    expect(laying([enter("A1"), release("A1")])).toStrictEqual({ state: LAY_IDLE, moves: [] });
  });
});

function carrying(way: Way, gestures: Gesture[], loops = 3) {
  let state: Carry = CARRY_IDLE;
  const moves = [];
  for (const gesture of gestures) {
    const answer = carry(state, gesture, way, () => loops);
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
    expect(carrying("transfer", gestures).moves).toStrictEqual([{ do: "transfer", from: "A2", to: "A1" }]);
  });

  it("takes nothing from a bare peg, and puts nothing back where it was", () => {
    expect(carrying("hook", [press("A2"), release("A1")], 0)).toStrictEqual({ state: CARRY_IDLE, moves: [] });
    expect(carrying("hook", [press("A2"), release("A2"), press("A2")])).toStrictEqual({ state: CARRY_IDLE, moves: [] });
    expect(carrying("hook", [press("A2"), release("A2"), CANCEL])).toStrictEqual({ state: CARRY_IDLE, moves: [] });
  });
});

describe("moves at one peg", () => {
  const at = (way: OneWay, gestures: Gesture[], end: string | null = null) => {
    let state = ONCE_IDLE;
    const moves = [];
    for (const gesture of gestures) {
      const answer = once(state, gesture, way, { colour: "A", loop: 1, end });
      state = answer.state;
      if (answer.move) moves.push(answer.move);
    }
    return moves;
  };

  it("lift, bind, knot and clip each take one press", () => {
    expect(at("lift", [press("A1")])).toStrictEqual([{ do: "lift", at: "A1" }]);
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
