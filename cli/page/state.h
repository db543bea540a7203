#pragma once

// A job as the page shows it, in JSON: what was said, what it comes to, every dimension with its
// name, and what is wrong with the place where it is.
//
// Lengths are {"text", "ticks"}, exact, in the job's unit and without it, as the job file takes
// them. Places on the drawing are numbers of millimetres from the mat's upper left corner as seen
// from the front.

#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "cli/page/laid.h"
#include "engine/sheets/stock/stock.h"

namespace mullion::cli::page {

using Json = nlohmann::ordered_json;

std::string dumped(const Json& json);

// Exact, without the unit: as the job file takes it.
Json of(Length length, Unit unit);
Json of(const Problems& problems);

struct StateOptions {
  std::string name;
  bool preview = false;
  bool can_undo = false, can_redo = false;
  const Stock* stock = nullptr;  // of the shop; null: none is known
  Locale locale;
  const Laid* closed = nullptr;  // of a job that has no mat: the last that could be laid out
};

Json state_of(const Laid& laid, const StateOptions& options);

// Numbers of the layers whose boards the stock does not have. None where there is no stock.
std::set<int> unknown_boards(const Job& job, const Stock* stock);

const char* word_of(Unit unit);

}  // namespace mullion::cli::page
