/** The server's answers by name, as its own description types them. */
import type { components } from "./types";

type Schemas = components["schemas"];
export type WorkResponse = Schemas["WorkResponse"];
export type WorkedMove = Schemas["WorkedMove"];
export type LoomEvent = WorkedMove["events"][number];
export type Finding = Schemas["WordedFinding"];
export type Start = Schemas["Starter"];
export type Shelf = Schemas["ShelfResponse"];
export type Glance = Schemas["Glance"];
export type Piece = Schemas["OpenedPiece"];
export type Saved = Schemas["Saved"];
export type Version = Schemas["Version"];
export type JobStatus = Schemas["JobStatus"];
export type JobRequest = Schemas["StartJobRequest"]["job"];
export type AtRest = Schemas["AtRest"];
export type Strand = Schemas["RestingStrand"];
export type Measured = Schemas["PieceMeasurements"];
export type Lengths = Schemas["RepeatOptions"];
export type Fitted = Schemas["FitResponse"];
export type ShelvedMotif = Schemas["ShelvedMotif"];
export type Stash = Schemas["Stash"];
export type Stashed = Schemas["StashResponse"];
export type Rehearsed = Schemas["RehearsalResponse"];
export type Slipped = Schemas["TroubleResponse"];
export type Snapped = Schemas["SnapResponse"];
