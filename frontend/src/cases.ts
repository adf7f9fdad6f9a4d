/** What Python makes of the built-in pieces, asked of Python itself. */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Op } from "./document/edit";
import type { Move, Pattern } from "./document/pattern";
import type { Loop } from "./kernels/loop_positions";
import type { WorkedMove } from "./schema/answers";

export interface Cases {
  pieces: { name: string; document: Pattern; moves: Move[]; seen: WorkedMove[]; stacks: Record<string, Loop[]>[] }[];
  mirrored: { document: Pattern; moves: Move[] }[];
  fixes: { before: unknown; patch: Op[]; after: unknown }[];
}

const root = fileURLToPath(new URL("../..", import.meta.url));
const python = process.env["PYTHON"] ?? ".venv/bin/python";
const told = execFileSync(python, ["-m", "tests.server.cases"], { cwd: root, maxBuffer: 1e8, encoding: "utf8" });

export const CASES = JSON.parse(told) as Cases;
