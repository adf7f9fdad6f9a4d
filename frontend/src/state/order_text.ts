/** What tells one working order from another, in a maker's words. */
import type { Effort, OrderMeasures } from "../schema/answers";
import { decimals, t } from "../words/words.svelte";

export function orderText(order: OrderMeasures): string {
  const said = [
    t("order-phrases", { count: order.phrases }),
    t("order-above", { count: order.loops_above }),
    t("order-travel", { length: decimals(order.travel_mm / 10, 0) }),
  ];
  if (order.failures !== null && order.failures !== undefined) said.push(t("order-failures", { count: decimals(order.failures, 1) }));
  if (order.symmetry === 1) said.push(t("order-alike"));
  if (order.loose_loops) said.push(t("order-loose", { count: order.loose_loops }));
  if (order.cautions) said.push(t("order-warnings", { count: order.cautions }));
  return said.join(" · ");
}

/** What is compared of the same piece, before and after: a name and two numbers a row. */
export function effortRows(before: Effort, after: Effort): { name: string; before: string; after: string }[] {
  const cm = (one: Effort): string => `${decimals(one.travel_mm / 10, 0)} cm`;
  return [
    { name: t("effort-phrases"), before: String(before.phrases), after: String(after.phrases) },
    { name: t("effort-colours"), before: String(before.colour_changes), after: String(after.colour_changes) },
    { name: t("effort-travel"), before: cm(before), after: cm(after) },
  ];
}

export function effortText(after: Effort): string {
  return effortRows(after, after)
    .map((row) => `${row.name}: ${row.after}`)
    .join(" · ");
}
