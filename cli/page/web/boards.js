// The boards and finishes of the shop's own files, asked for once.

import { failed, redraw } from "./desk.js";
import { get } from "./server.js";

export const shop = { boards: null, finishes: null, called: undefined }; // null: the shop has no file yet

async function learn(address, take) {
  try {
    take(await get(address));
    redraw();
  } catch (error) {
    if (error.status !== 404) failed(error);
  }
}

export const learn_finishes = () => learn("/api/finishes", ({ finishes, shop: called }) => Object.assign(shop, { finishes, called }));

export function learn_shop() {
  if (shop.boards) return;
  shop.boards = [];
  learn("/api/boards", ({ boards }) => { shop.boards = boards; });
  learn_finishes();
}
