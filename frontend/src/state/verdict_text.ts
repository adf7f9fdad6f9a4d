/** The verdict in one line, as it stands wherever it is in sight. */
import { t } from "../words/words.svelte";
import { bench } from "./bench.svelte";

export function verdictText(): string {
  const { holds, colours, falls, unproved } = bench.work;
  const count = colours?.length ?? 0;
  if (holds) return t("holds", { count });
  if (!count) return t("holds-none");
  if (!bench.closed) return t("not-closed", { count });
  return [falls?.length ? t("falls", { count: falls.length, of: count }) : "", unproved?.length ? t("unproved", { count: unproved.length }) : ""].filter(Boolean).join(" ");
}
