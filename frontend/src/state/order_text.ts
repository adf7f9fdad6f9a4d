/** What tells one working order from another, in a maker's words. */
import type { OrderMeasures } from "../schema/answers";
import { t } from "../words/words.svelte";

export function orderText(order: OrderMeasures): string {
  const said = [
    t("order-phrases", { count: order.phrases }),
    t("order-above", { count: order.loops_above }),
    t("order-travel", { length: (order.travel_mm / 10).toFixed(0) }),
  ];
  if (order.symmetry === 1) said.push(t("order-alike"));
  if (order.loose_loops) said.push(t("order-loose", { count: order.loose_loops }));
  if (order.cautions) said.push(t("order-warnings", { count: order.cautions }));
  return said.join(" · ");
}
