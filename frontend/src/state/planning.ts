/** One press finds an order, one press mends; what the other had found is put away. */
import { bench } from "./bench.svelte";
import { mends } from "./mends.svelte";
import { orders, type HowToLook } from "./orders.svelte";

export async function findOrders(how?: HowToLook): Promise<void> {
  mends.drop();
  if (bench.work.moves?.length) await orders.find(how);
}

/** Returns whether the piece was mended. */
export async function mendPiece(): Promise<boolean> {
  orders.drop();
  return bench.work.moves?.length ? mends.find() : false;
}
