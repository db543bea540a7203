#include "engine/sheets/inventory/rack.h"

#include <iostream>
#include <memory>
#include <optional>

#include "cli/answer.h"
#include "cli/language.h"
#include "cli/verb.h"
#include "cli/verbs/label_sheet.h"
#include "cli/verbs/undo_stock.h"
#include "engine/sheets/inventory/ledger_text.h"
#include "engine/sheets/inventory/stock_file.h"
#include "engine/sheets/stock/size_text.h"
#include "engine/xml/words.h"
#include "render/sheetplan/labels.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string stock, labels, rebuild;
  LabelSheetWords label_sheet;
  bool takes = false, returns = false, lost = false, undo = false, ledger = false;
  Locale locale;  // of the labels
  Answer answer{"rack"};
};

// Codes from a scanner, one a line; the words take, return, lost and undo, which may stand on cards
// beside it, say what is done from there on.
class Scanning {
 public:
  explicit Scanning(const Options& options)
      : options_(options),
        act_(options.returns ? Act::returned
             : options.lost  ? Act::lost
                             : Act::taken) {}

  int run() {
    constexpr std::size_t longest_code = 1000;
    std::string line;
    while (std::getline(std::cin, line)) {
      const std::string code = tidy(std::string_view(line).substr(0, longest_code));
      if (!code.empty()) one(code);
    }
    if (!options_.answer.is_json()) return status_;
    const Result<Stock> stock = look_at_stock(options_.stock);
    if (!stock) return options_.answer.fail(stock.error());
    const int written = write_output("-", rack_json("rack", *stock, acts_, {status_, problems_}));
    return written == success ? status_ : written;
  }

 private:
  // The file is held for one code at a time, so that plans can be made meanwhile.
  void one(const std::string& code) {
    Result<StockFile> file = StockFile::open(options_.stock);
    if (!file) return refuse(file.error());
    const bool is_piece = find_piece(file->stock().pieces, code) != nullptr;
    if (!is_piece && is_word(code)) return;
    if (!is_piece && code == "undo") {
      const Result<LedgerLine> undone = file->undo();
      if (!undone) return refuse(undone.error());
      acts_.push_back(file->ledger().lines.back());
      return tell("undone: " + line_text(*undone, file->stock().unit));
    }
    const Result<RackMove> move = move_piece(file->stock(), file->ledger(), code, act_);
    if (!move) return refuse(move.error());
    Deed deed;
    deed.act = act_;
    if (const auto done = file->commit(move->stock, deed); !done) return refuse(done.error());
    acts_.push_back(file->ledger().lines.back());
    const StockPiece& piece = move->piece;
    const Scale scale{file->stock().unit, sixty_fourths(1)};
    tell(piece.id + " " + word_for(act_) + ": " + piece.board.name + ", " +
         size_text(piece.width, piece.height, scale) + "; " + std::to_string(*piece.on_hand) +
         " on the rack");
  }

  bool is_word(const std::string& code) {
    for (const auto& [word, act] :
         {std::pair("take", Act::taken), std::pair("return", Act::returned),
          std::pair("lost", Act::lost)}) {
      if (code != word) continue;
      act_ = act;
      return true;
    }
    return false;
  }

  void refuse(const Problems& problems) {
    status_ = std::max(status_, status_of(problems));
    problems_.insert(problems_.end(), problems.begin(), problems.end());
    if (!options_.answer.is_json()) report(problems);
  }

  void tell(const std::string& text) {
    if (!options_.answer.is_json()) write_output("-", text + "\n");
  }

  const Options& options_;
  Act act_;
  int status_ = success;
  Problems problems_;
  std::vector<LedgerLine> acts_;
};

int rebuild(const Options& options) {
  const Result<Ledger> ledger = read_ledger(options.stock);
  if (!ledger) return options.answer.fail(ledger.error());
  if (ledger->lines.empty()) {
    return options.answer.fail_option("--rebuild", "found no ledger beside " + options.stock);
  }
  return options.answer.save(options.rebuild, write_stock(stock_of(*ledger)));
}

int write_labels(const Options& options, const Stock& stock) {
  std::vector<RackLabel> labels;
  for (const StockPiece& piece : stock.pieces) {
    if (piece.offcut && piece.on_hand.value_or(0) > 0) labels.push_back({piece, {}});
  }
  LabelOptions label_options;
  label_options.skip = options.label_sheet.skip;
  label_options.scale = {stock.unit, stock.unit == Unit::inch
                                         ? sixty_fourths(1)
                                         : Length::from_ticks(ticks_per_mm / 10)};
  label_options.locale = options.locale;
  return write_output(
      options.labels,
      render_rack_labels(labels, label_sheet(options.label_sheet, stock.unit), label_options));
}

int look_after_rack(const Options& options) {
  const int scans = int{options.takes} + int{options.returns} + int{options.lost};
  const int others = int{options.undo} + int{options.ledger} + int{!options.rebuild.empty()} +
                     int{!options.labels.empty()};
  if (scans + others > 1) {
    return options.answer.fail_option(
        "rack",
        "expected one of --take, --return, --lost, --undo, --ledger, --rebuild and --labels");
  }
  if (scans == 1) return Scanning(options).run();
  if (options.undo) return undo_last(options.stock, "rack", options.answer);
  if (!options.rebuild.empty()) return rebuild(options);
  const Result<Stock> stock = look_at_stock(options.stock);
  if (!stock) return options.answer.fail(stock.error());
  if (!options.labels.empty()) return write_labels(options, *stock);
  Result<Ledger> ledger = Ledger{};
  if (options.ledger) ledger = read_ledger(options.stock);
  if (!ledger) return options.answer.fail(ledger.error());
  return options.answer.give(
      [&] { return options.ledger ? ledger_text(*ledger) : rack_text(*stock); },
      [&] {
        return rack_json("rack", *stock, ledger->lines, {success, {}});
      });
}

}  // namespace

void add_rack(CommandLine& program) {
  const Verb verb = program.verb(
      "rack", "List what is on the rack, label it, and take pieces out and put them back");
  auto options = std::make_shared<Options>();
  verb.argument("STOCK", Takes::file, options->stock, "The stock file").required();
  verb.flag("--take", options->takes,
            "Take away the pieces whose codes come on standard input, one a line, as a scanner "
            "writes them; a line with the word take, return, lost or undo says what is done from "
            "there on");
  verb.flag("--return", options->returns, "The same, putting them back");
  verb.flag("--lost", options->lost, "The same, of pieces that are not there any more");
  verb.flag("--undo", options->undo, "Undo what was last done to the stock file, by its ledger");
  verb.flag("--ledger", options->ledger, "List what was done, in words");
  verb.option("--rebuild", Takes::file, options->rebuild,
              "A stock file to write anew from the ledger alone");
  verb.option("--labels", Takes::file, options->labels,
              "A PDF of labels to write, one for each off-cut on the rack");
  add_label_sheet_options(verb, options->label_sheet);
  add_language_option(verb, options->locale);
  options->answer.add_option(verb);
  verb.runs([options] { return look_after_rack(*options); });
}

}  // namespace mullion::cli
