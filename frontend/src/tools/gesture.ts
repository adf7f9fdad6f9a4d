/** What a hand does at the loom, by mouse, finger or key. `more` is said with Shift: not the last peg yet. */
export type Gesture =
  | { kind: "press"; peg: string; more?: boolean }
  | { kind: "enter"; peg: string }
  | { kind: "release"; peg: string | null }
  | { kind: "loop"; loop: number }
  | { kind: "through"; loops: number | null }
  | { kind: "catch"; peg: string; loops: number | null }
  | { kind: "done" }
  | { kind: "cancel" };

import type { Move } from "../document/pattern";

/** A tool answers a gesture with its next state and, where the gesture was complete, the move it means. */
export interface ToolAnswer<S> {
  state: S;
  move?: Move;
  /** Several moves that the one gesture meant. */
  moves?: readonly Move[];
}
