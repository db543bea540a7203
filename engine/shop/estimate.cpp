#include "engine/shop/estimate.h"

#include <algorithm>
#include <set>

#include "engine/shop/quantity.h"

namespace mullion::price {
namespace {

class Estimator {
 public:
  Estimator(const Job& job, const Cuts& cuts, const Book& book, const Choices& choices)
      : job_(job),
        cuts_(cuts),
        mat_(*cuts.mat),
        book_(book),
        choices_(choices),
        locale_(choices.locale),
        scale_(locale_.first_scale(job.scale)) {
    out_.currency = book.currency;
  }

  Result<Estimate> run();

 private:
  void boards();
  void board(const BoardCuts& cut);
  void openings();
  void shapes();
  void frame();
  void glazing();
  void labour();
  void closing();
  void count(const std::optional<Rate>& rate, int number, const char* what,
             const std::string& counted, bool customer_sees = true);
  void item(const std::string& what, const std::string& detail, const Rate& rate,
            const Quantity& quantity);
  void add(Line::Kind kind, const std::string& what, const std::string& how, Money price);
  void discount(Money& sum);
  void tax(Money& sum);
  Money money(const Amount& amount) const {
    return rounded(amount, book_.currency, book_.rounding);
  }
  std::string text(Money money) const { return format(money, book_.currency, locale_); }
  void missing(const std::string& what, const std::string& name,
               const std::vector<std::string_view>& known, Place place);

  const Job& job_;
  const Cuts& cuts_;
  const Mat& mat_;
  const Book& book_;
  const Choices& choices_;
  const Locale& locale_;
  const Scale scale_;  // of sizes
  Estimate out_;
  Problems problems_;
  Money piece_, piece_cost_;
};

template <class Entry>
const Entry* entry_for(const std::vector<Entry>& entries, const std::string& name) {
  const Entry* any = nullptr;
  for (const Entry& entry : entries) {
    if (entry.name == name) return &entry;
    if (entry.name.empty()) any = &entry;
  }
  return any;
}

template <class Entry>
std::vector<std::string_view> names_of(const std::vector<Entry>& entries) {
  std::vector<std::string_view> out;
  for (const Entry& entry : entries) {
    if (!entry.name.empty()) out.push_back(entry.name);
  }
  return out;
}

void Estimator::missing(const std::string& what, const std::string& name,
                        const std::vector<std::string_view>& known, Place place) {
  std::string message = "found no price for " + what + " \"" + name + "\" in " + book_.file;
  const std::string_view near = near_name(name, known);
  if (!near.empty()) message += "; did you mean \"" + std::string(near) + "\"?";
  problems_.push_back({Severity::error, "price-missing", message, place, job_.file});
}

void Estimator::add(Line::Kind kind, const std::string& what, const std::string& how, Money price) {
  out_.lines.push_back({kind, what, how, how, price, std::nullopt});
}

void Estimator::item(const std::string& what, const std::string& detail, const Rate& rate,
                     const Quantity& quantity) {
  Amount amount = rate.price * quantity.number;
  const std::string price = format_rate(rate.price, book_.currency, locale_);
  std::string how = locale_.say("%1 at %2", quantity.how, price);
  if (amount < rate.least) {
    amount = rate.least;
    how = locale_.say("%1 at %2, least charge %3", quantity.how, price,
                      format_rate(rate.least, book_.currency, locale_));
  }
  Line line{Line::Kind::item, what, detail, how, money(amount), std::nullopt};
  if (rate.cost) {
    line.cost = money(*rate.cost * quantity.number);
    piece_cost_ = piece_cost_ + *line.cost;
  } else {
    out_.cost_known = false;
  }
  piece_ = piece_ + line.price;
  out_.lines.push_back(std::move(line));
}

void Estimator::count(const std::optional<Rate>& rate, int number, const char* what,
                      const std::string& counted, bool customer_sees) {
  if (!rate || number == 0) return;
  item(locale_.say(what), customer_sees ? counted : "", *rate, {number, counted});
}

void Estimator::board(const BoardCuts& cut) {
  const MatLayer& layer = *cut.layer;
  const std::string name = layer.board.board.empty() ? layer.board.name : layer.board.board;
  const BoardPrice* price = entry_for(book_.boards, name);
  if (price == nullptr) {
    missing("the board", name, names_of(book_.boards), layer.board.place);
    return;
  }
  const Length width = cut.blank.width(), height = cut.blank.height();
  Quantity quantity;
  switch (price->rate.basis) {
    case Basis::sheet:
      quantity = sheet_share(width, height, *price, scale_, locale_);
      break;
    case Basis::united_inch:
      quantity = united_inches(width, height, locale_);
      break;
    default:
      quantity = area(width, height, price->rate.basis, scale_, locale_);
  }
  if (quantity.how.empty()) {
    problems_.push_back(
        {Severity::error, "price-sheet-too-small",
         "the blank does not fit on the sheet of " + book_.file + " for \"" + name + "\"",
         layer.board.place, job_.file});
    return;
  }
  item(locale_.say("Mat board %1", name), locale_.size(width, height, scale_), price->rate,
       quantity);
}

void Estimator::boards() {
  int windows_layers = 0;
  for (const BoardCuts& one : cuts_.layers) {
    board(one);
    if (!one.layer->board.spacer) ++windows_layers;
  }
  count(book_.extra_layer, windows_layers - 1, mark("Further layers"),
        locale_.plural(windows_layers - 1, "%1 layer", "%1 layers"));
}

void Estimator::openings() {
  int windows = 0;
  for (const MatLayer& layer : mat_.layers) windows += static_cast<int>(layer.windows.size());
  count(book_.opening, windows, mark("Openings cut"),
        locale_.plural(windows, "%1 window", "%1 windows"));
  shapes();
  const int grooves = static_cast<int>(mat_.grooves.size());
  count(book_.groove, grooves, mark("V-grooves"),
        locale_.plural(grooves, "%1 groove", "%1 grooves"));
}

void Estimator::shapes() {
  for (const auto& [kind, rate] : book_.shapes) {
    int windows = 0;
    for (const MatLayer& layer : mat_.layers) {
      for (const Window& window : layer.windows) windows += window.shape.kind == kind ? 1 : 0;
    }
    count(rate, windows, mark("Shaped openings"),
          locale_.plural(windows, "%1 shaped window", "%1 shaped windows"));
  }
}

void Estimator::frame() {
  if (!job_.frame) return;
  const MouldingPrice* price = entry_for(book_.mouldings, job_.frame->moulding);
  if (price == nullptr) {
    missing("the moulding", job_.frame->moulding, names_of(book_.mouldings), job_.frame->place);
    return;
  }
  const Frame& frame = *job_.frame;
  item(locale_.say("Moulding %1", frame.moulding),
       locale_.say("for a rabbet of %1",
                   locale_.size(frame.rabbet_width, frame.rabbet_height, scale_)),
       price->rate, moulding_length(frame, *price, scale_, locale_));
}

void Estimator::glazing() {
  if (!job_.frame || !choices_.glazed) return;
  if (book_.glazings.empty() && choices_.glazing.empty()) return;
  const GlazingPrice* price = choices_.glazing.empty()
                                  ? &book_.glazings.front()
                                  : entry_for(book_.glazings, choices_.glazing);
  if (price == nullptr) {
    missing("the glazing", choices_.glazing, names_of(book_.glazings), {});
    return;
  }
  const Length width = mat_.outer.width(), height = mat_.outer.height();
  item(locale_.say("Glazing %1", price->name),
       locale_.say("as the mat, %1", locale_.size(width, height, scale_)), price->rate,
       price->rate.basis == Basis::united_inch
           ? united_inches(width, height, locale_)
           : area(width, height, price->rate.basis, scale_, locale_));
}

void Estimator::labour() {
  if (!choices_.minutes) return;
  count(book_.labour, *choices_.minutes, mark("Labour"),
        locale_.plural(*choices_.minutes, "%1 minute", "%1 minutes"), false);
}

void Estimator::discount(Money& sum) {
  const Discount* best = nullptr;
  for (const Discount& entry : book_.discounts) {
    const bool applies = job_.quantity >= entry.from_quantity;
    if (applies && (best == nullptr || entry.from_quantity > best->from_quantity)) best = &entry;
  }
  if (best == nullptr || best->percent == 0) return;
  const Money off = money(amount_of(sum, book_.currency) * best->percent / 100);
  const std::string percent = plain(best->percent, locale_);
  add(Line::Kind::adjustment, locale_.say("Discount"),
      best->from_quantity > 1
          ? locale_.say("%1 % from %2 pieces of %3", percent, best->from_quantity, text(sum))
          : locale_.say("%1 % of %2", percent, text(sum)),
      {-off.units});
  sum = sum - off;
}

void Estimator::tax(Money& sum) {
  if (!book_.tax) return;
  const Tax& entry = *book_.tax;
  const Amount amount = amount_of(sum, book_.currency);
  const std::string rate = locale_.say("%1 %2 %", entry.name, plain(entry.percent, locale_));
  if (entry.included) {
    const Money held = money(amount * entry.percent / (100 + entry.percent));
    add(Line::Kind::sum, locale_.say("of which %1", rate), locale_.say("included in %1", text(sum)),
        held);
    return;
  }
  const Money tax = money(amount * entry.percent / 100);
  add(Line::Kind::adjustment, rate, locale_.say("of %1", text(sum)), tax);
  sum = sum + tax;
}

void Estimator::closing() {
  if (book_.least_charge && piece_ < *book_.least_charge) {
    add(Line::Kind::adjustment, locale_.say("Least charge"),
        locale_.say("raised to %1", text(*book_.least_charge)), *book_.least_charge - piece_);
    piece_ = *book_.least_charge;
  }
  if (book_.round_to) {
    const Money round = rounded_to(piece_, *book_.round_to, book_.rounding);
    if (round != piece_) {
      add(Line::Kind::adjustment, locale_.say("Rounding"),
          locale_.say("to a multiple of %1", text(*book_.round_to)), round - piece_);
    }
    piece_ = round;
  }
  Money sum{piece_.units * job_.quantity};
  if (job_.quantity > 1) {
    add(Line::Kind::sum, locale_.say("One piece"), locale_.say("sum of the lines above"), piece_);
    add(Line::Kind::sum, locale_.plural(job_.quantity, "%1 piece", "%1 pieces"),
        locale_.say("%1 at %2", job_.quantity, text(piece_)), sum);
  }
  discount(sum);
  const bool included = book_.tax && book_.tax->included;
  if (!included) tax(sum);
  add(Line::Kind::total, locale_.say("Total"),
      included || book_.tax ? locale_.say("tax included") : "", sum);
  if (included) tax(sum);
  out_.total = sum;
  out_.cost = {piece_cost_.units * job_.quantity};
}

Result<Estimate> Estimator::run() {
  boards();
  openings();
  frame();
  glazing();
  labour();
  if (!problems_.empty()) return tl::unexpected(std::move(problems_));
  closing();
  return std::move(out_);
}

}  // namespace

Result<Estimate> estimate(const Job& job, const Cuts& cuts, const Book& book,
                          const Choices& choices) {
  return Estimator(job, cuts, book, choices).run();
}

}  // namespace mullion::price
