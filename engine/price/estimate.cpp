#include "engine/price/estimate.h"

#include <algorithm>
#include <set>

#include "engine/price/quantity.h"

namespace mullion::price {
namespace {

class Estimator {
 public:
  Estimator(const Job& job, const Mat& mat, const Book& book, const Choices& choices)
      : job_(job), mat_(mat), book_(book), choices_(choices) {
    out_.currency = book.currency;
  }

  Result<Estimate> run();

 private:
  void boards();
  void board(const MatLayer& layer);
  void openings();
  void shapes();
  void frame();
  void glazing();
  void labour();
  void closing();
  void count(const std::optional<Rate>& rate, int number, const std::string& what,
             const std::string& unit, bool customer_sees = true);
  void item(const std::string& what, const std::string& detail, const Rate& rate,
            const Quantity& quantity);
  void add(Line::Kind kind, const std::string& what, const std::string& how, Money price);
  void discount(Money& sum);
  void tax(Money& sum);
  Money money(const Amount& amount) const {
    return rounded(amount, book_.currency, book_.rounding);
  }
  std::string text(Money money) const { return format(money, book_.currency); }
  void missing(const std::string& what, const std::string& name,
               const std::vector<std::string_view>& known, Place place);

  const Job& job_;
  const Mat& mat_;
  const Book& book_;
  const Choices& choices_;
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
  std::string how = quantity.how + " at " + format_rate(rate.price, book_.currency);
  if (amount < rate.least) {
    amount = rate.least;
    how += ", least charge " + format_rate(rate.least, book_.currency);
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

void Estimator::count(const std::optional<Rate>& rate, int number, const std::string& what,
                      const std::string& unit, bool customer_sees) {
  if (!rate || number == 0) return;
  const std::string counted = std::to_string(number) + " " + unit + (number == 1 ? "" : "s");
  item(what, customer_sees ? counted : "", *rate, {number, counted});
}

void Estimator::board(const MatLayer& layer) {
  const std::string name = layer.board.board.empty() ? layer.board.name : layer.board.board;
  const BoardPrice* price = entry_for(book_.boards, name);
  if (price == nullptr) {
    missing("the board", name, names_of(book_.boards), layer.board.place);
    return;
  }
  const Length width = layer.outer.width(), height = layer.outer.height();
  Quantity quantity;
  switch (price->rate.basis) {
    case Basis::sheet:
      quantity = sheet_share(width, height, *price, job_.scale);
      break;
    case Basis::united_inch:
      quantity = united_inches(width, height);
      break;
    default:
      quantity = area(width, height, price->rate.basis, job_.scale);
  }
  if (quantity.how.empty()) {
    problems_.push_back(
        {Severity::error, "price-sheet-too-small",
         "the blank does not fit on the sheet of " + book_.file + " for \"" + name + "\"",
         layer.board.place, job_.file});
    return;
  }
  item("Mat board " + name, size_words(width, height, job_.scale), price->rate, quantity);
}

void Estimator::boards() {
  int windows_layers = 0;
  for (const MatLayer& layer : mat_.layers) {
    board(layer);
    if (!layer.board.spacer) ++windows_layers;
  }
  count(book_.extra_layer, windows_layers - 1, "Further layers", "layer");
}

void Estimator::openings() {
  int windows = 0;
  for (const MatLayer& layer : mat_.layers) windows += static_cast<int>(layer.windows.size());
  count(book_.opening, windows, "Openings cut", "window");
  shapes();
  count(book_.groove, static_cast<int>(mat_.grooves.size()), "V-grooves", "groove");
}

void Estimator::shapes() {
  for (const auto& [kind, rate] : book_.shapes) {
    int windows = 0;
    for (const MatLayer& layer : mat_.layers) {
      for (const Window& window : layer.windows) windows += window.shape.kind == kind ? 1 : 0;
    }
    count(rate, windows, "Shaped openings", "shaped window");
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
  item("Moulding " + frame.moulding,
       "for " + size_words(frame.rabbet_width, frame.rabbet_height, job_.scale), price->rate,
       moulding_length(frame, *price, job_.scale));
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
  item("Glazing " + price->name, size_words(width, height, job_.scale), price->rate,
       price->rate.basis == Basis::united_inch
           ? united_inches(width, height)
           : area(width, height, price->rate.basis, job_.scale));
}

void Estimator::labour() {
  if (choices_.minutes) count(book_.labour, *choices_.minutes, "Labour", "minute", false);
}

void Estimator::discount(Money& sum) {
  const Discount* best = nullptr;
  for (const Discount& entry : book_.discounts) {
    const bool applies = job_.quantity >= entry.from_quantity;
    if (applies && (best == nullptr || entry.from_quantity > best->from_quantity)) best = &entry;
  }
  if (best == nullptr || best->percent == 0) return;
  const Money off = money(amount_of(sum, book_.currency) * best->percent / 100);
  std::string how = plain(best->percent) + " %";
  if (best->from_quantity > 1) how += " from " + std::to_string(best->from_quantity) + " pieces";
  add(Line::Kind::adjustment, "Discount", how + " of " + text(sum), {-off.units});
  sum = sum - off;
}

void Estimator::tax(Money& sum) {
  if (!book_.tax) return;
  const Tax& entry = *book_.tax;
  const Amount amount = amount_of(sum, book_.currency);
  const std::string rate = entry.name + " " + plain(entry.percent) + " %";
  if (entry.included) {
    const Money held = money(amount * entry.percent / (100 + entry.percent));
    add(Line::Kind::sum, "of which " + rate, "included in " + text(sum), held);
    return;
  }
  const Money tax = money(amount * entry.percent / 100);
  add(Line::Kind::adjustment, rate, "of " + text(sum), tax);
  sum = sum + tax;
}

void Estimator::closing() {
  if (book_.least_charge && piece_ < *book_.least_charge) {
    add(Line::Kind::adjustment, "Least charge", "raised to " + text(*book_.least_charge),
        *book_.least_charge - piece_);
    piece_ = *book_.least_charge;
  }
  if (book_.round_to) {
    const Money round = rounded_to(piece_, *book_.round_to, book_.rounding);
    if (round != piece_) {
      add(Line::Kind::adjustment, "Rounding", "to a multiple of " + text(*book_.round_to),
          round - piece_);
    }
    piece_ = round;
  }
  Money sum{piece_.units * job_.quantity};
  if (job_.quantity > 1) {
    add(Line::Kind::sum, "One piece", "sum of the lines above", piece_);
    add(Line::Kind::sum, std::to_string(job_.quantity) + " pieces",
        std::to_string(job_.quantity) + " at " + text(piece_), sum);
  }
  discount(sum);
  const bool included = book_.tax && book_.tax->included;
  if (!included) tax(sum);
  add(Line::Kind::total, "Total", included || book_.tax ? "tax included" : "", sum);
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

Result<Estimate> estimate(const Job& job, const Mat& mat, const Book& book,
                          const Choices& choices) {
  return Estimator(job, mat, book, choices).run();
}

}  // namespace mullion::price
