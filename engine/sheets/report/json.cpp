#include "engine/sheets/report/json.h"

#include "engine/sheets/batch/work_json.h"
#include "engine/sheets/stock/size_text.h"
#include "engine/xml/colour.h"

namespace mullion {
namespace {

using Json = nlohmann::ordered_json;

Json length(Length value, const Scale& scale) {
  return {{"ticks", value.ticks()}, {"text", size_text(value, scale)}};
}

class Writer {
 public:
  explicit Writer(const SheetReport& report) : report_(report), scale_(report.plan.scale) {}

  Json plan() const {
    Json json;
    json["format"] = "mullion sheets 1";
    json["currency"] = report_.plan.currency;
    json["costIn"] = !report_.stock.priced_by_area      ? "hundredths"
                     : report_.stock.unit == Unit::inch ? "square inches"
                                                        : "square centimetres";
    json["cost"] = report_.plan.cost();
    json["bound"] = report_.plan.bound();
    json["boards"] = Json::array();
    for (const BoardPlan& board : report_.plan.boards) json["boards"].push_back(of(board));
    const PullList list = pull_list(report_.plan, report_.stock, report_.rest);
    json["pull"] = Json::array();
    for (const PullLine& line : list.lines) json["pull"].push_back(of(line));
    json["orders"] = Json::array();
    for (const OrderShare& order : list.orders) {
      json["orders"].push_back({{"order", order.order}, {"cost", order.cost}});
    }
    json["leftOut"] = Json::array();
    for (const LeftOut& left : report_.plan.left_out) {
      Json boards = Json::array();
      for (const Board& board : left.short_of) boards.push_back(describe(board, scale_));
      json["leftOut"].push_back({{"order", left.order},
                                 {"mats", left.mats},
                                 {"ordered", left.ordered},
                                 {"shortOf", std::move(boards)}});
    }
    json["offcuts"] = Json::array();
    for (const KeptOffcut& offcut : kept_offcuts(report_.plan, report_.stock, report_.keep)) {
      json["offcuts"].push_back({{"id", offcut.piece.id},
                                 {"board", offcut.piece.board.name},
                                 {"sheet", offcut.sheet > 0 ? Json(offcut.sheet) : Json()},
                                 {"from", origin_of(offcut, report_.plan)},
                                 {"count", offcut.piece.on_hand.value_or(1)},
                                 {"width", length(offcut.piece.width, scale_)},
                                 {"height", length(offcut.piece.height, scale_)}});
    }
    if (report_.work) json["parts"] = work_json(*report_.work);
    return json;
  }

 private:
  Json of(const BoardPlan& board) const {
    const BoardUse use = use_of(board, report_.stock, report_.cutter);
    Json json{{"board", board.board.name},
              {"colour", board.board.any_colour ? Json() : Json(format_colour(board.board.colour))},
              {"thickness", length(board.board.thickness, scale_)},
              {"cost", board.cost},
              {"bound", board.bound},
              {"blanks", use.blanks},
              {"used", use.used},
              {"cuts", use.cuts},
              {"settings", use.settings},
              {"blanksOfFallouts", use.blanks_of_fallouts},
              {"squareInchesSaved", use.square_inches_saved}};
    if (board.cost_without_fallouts) json["costWithoutFallouts"] = *board.cost_without_fallouts;
    json["sheets"] = Json::array();
    for (const PlannedSheet& sheet : board.sheets) json["sheets"].push_back(of(sheet, board));
    json["missing"] = Json::array();
    for (const BlankCopy& copy : board.missing) json["missing"].push_back(of(copy, board));
    return json;
  }

  Json of(const PullLine& line) const {
    const StockPiece& piece = *line.piece;
    return {{"id", piece.id},
            {"board", piece.board.name},
            {"width", length(piece.width, scale_)},
            {"height", length(piece.height, scale_)},
            {"needed", line.needed},
            {"onRack", piece.on_hand ? Json(*piece.on_hand) : Json()},
            {"pull", line.pull},
            {"buy", line.buy},
            {"supplier", piece.supplier},
            {"pack", piece.pack},
            {"packs", line.packs},
            {"price", line.price()}};
  }

  Json of(const BlankCopy& copy, const BoardPlan& board) const {
    const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
    return {{"order", line.order},
            {"layer", line.layer},
            {"copy", copy.copy},
            {"width", length(line.width, scale_)},
            {"height", length(line.height, scale_)}};
  }

  Json of(const PlannedSheet& sheet, const BoardPlan& board) const {
    Json json{{"number", sheet.number},
              {"stage", sheet.stage},
              {"from", source_of(sheet, board, report_.stock)},
              {"width", length(sheet.width, scale_)},
              {"height", length(sheet.height, scale_)}};
    json["blanks"] = Json::array();
    for (const PlacedBlank& placed : blanks_in(sheet.pattern, report_.plan.limits.kerf)) {
      Json blank = of(sheet.blanks[static_cast<std::size_t>(placed.blank)], board);
      blank["left"] = length(sheet.trim.left + placed.left, scale_);
      blank["top"] = length(sheet.trim.top + placed.top, scale_);
      blank["turned"] = placed.turned;
      json["blanks"].push_back(std::move(blank));
    }
    json["cuts"] = Json::array();
    for (const NumberedCut& cut : cuts_of(sheet, report_.cutter)) {
      json["cuts"].push_back({{"number", cut.number},
                              {"fromX", cut.from.x.ticks()},
                              {"fromY", cut.from.y.ticks()},
                              {"toX", cut.to.x.ticks()},
                              {"toY", cut.to.y.ticks()},
                              {"stop", length(cut.stop, scale_)},
                              {"setting", setting_text(cut, report_.cutter, scale_)},
                              {"restAtStop", cut.rest_at_stop},
                              {"marked", cut.marked},
                              {"trim", cut.trim},
                              {"check", cut.check},
                              {"bevel", cut.bevel}});
    }
    return json;
  }

  const SheetReport& report_;
  const Scale& scale_;
};

}  // namespace

Json sheets_json(const SheetReport& report) {
  return Writer(report).plan();
}

std::string json_of(const SheetReport& report) {
  return sheets_json(report).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace mullion
