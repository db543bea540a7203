// The boards and finishes of the shop's own file, asked for once.

import { failed, redraw } from "./desk.js";
import { get } from "./server.js";

export const shop = { boards: null, finishes: null };

async function learn(what, address) {
  try {
    shop[what] = (await get(address))[what];
    redraw();
  } catch (error) {
    if (error.status !== 404) failed(error);
  }
}

export function learn_shop() {
  if (shop.boards) return;
  shop.boards = [];
  learn("boards", "/api/boards");
  learn("finishes", "/api/finishes");
}
