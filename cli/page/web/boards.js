// The boards and finishes of the shop's own file, asked for once.

import { failed, redraw } from "./desk.js";
import { get } from "./server.js";

export const shop = { boards: null, finishes: null };

export function learn_shop() {
  if (shop.boards) return;
  Object.assign(shop, { boards: [], finishes: [] });
  Promise.all([get("/api/boards"), get("/api/finishes")]).then(([{ boards }, { finishes }]) => {
    Object.assign(shop, { boards, finishes });
    redraw();
  }).catch(failed);
}
