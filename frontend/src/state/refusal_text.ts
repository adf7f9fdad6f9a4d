/** Why something was refused, in the page's language. */
import { RefusedError } from "../wire/client";
import { t } from "../words/words.svelte";

/** The server words most refusals itself; those that never reach its rooms are worded here.
 * @throws the error itself where it is no refusal: a fault of the page's is to be loud. */
export function refusalText(error: unknown): string {
  if (!(error instanceof RefusedError)) throw error;
  if (error.status === 0) return t("no-answer");
  if (error.status === 401) return t("locked");
  return [error.message, ...error.findings.map((finding) => finding.message)].join(" ");
}
