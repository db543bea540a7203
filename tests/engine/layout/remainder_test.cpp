// Where the remainder goes when sizes do not divide into whole steps of the rule: into the bottom
// border, then into the outer borders, and equal gaps stay equal.

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <numeric>

#include "engine/layout/arrangement.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/wild_job.h"

using namespace mullion;
using solver::Rational;

namespace {

// Equal openings of 5 x 5 (inches, or centimetres of a metric job) along a row or a column.
std::string equal_openings(int count, bool row, const std::string& outer) {
  std::string lines = "<layers><layer board=\"Oat\"/></layers>" + outer + "<arrange>";
  lines += row ? "<row>" : "<column>";
  for (int i = 0; i < count; ++i) lines += R"(<opening width="5 in" height="5 in"/>)";
  return lines + (row ? "</row>" : "</column>") + "</arrange>";
}

// Along the row or column: the near border, the gaps, the far border.
std::vector<Length> parts_of(const Layout& layout, bool row) {
  const auto start = [&](const Rect& r) { return row ? r.left : r.top; };
  const auto end = [&](const Rect& r) { return row ? r.right : r.bottom; };
  std::vector<Length> out{row ? layout.borders.left : layout.borders.top};
  for (std::size_t i = 1; i < layout.openings.size(); ++i) {
    out.push_back(start(layout.openings[i].rect) - end(layout.openings[i - 1].rect));
  }
  out.push_back(row ? layout.borders.right : layout.borders.bottom);
  return out;
}

}  // namespace

TEST_CASE("a remainder goes to the right or the bottom border, and equal gaps stay equal") {
  for (const std::string increment : {"1/16 in", "1/32 in", "1 mm", "0.5 mm"}) {
    const bool metric = increment.find("mm") != std::string::npos;
    const std::string attributes = std::string("unit=\"") + (metric ? "mm" : "in") +
                                   "\" increment=\"" + increment.substr(0, increment.find(' ')) +
                                   "\"";
    const Length step = parse_length(increment, Unit::inch).value();
    for (const bool row : {true, false}) {
      for (int count = 2; count <= 6; ++count) {
        for (int more = 0; more < 2 * count; ++more) {
          const Length steps = step * (metric ? more + 3 : more);
          const Length outer = round_to_multiple(inches(7 * count + 4), step) + steps;
          const std::string lines = equal_openings(
              count, row,
              std::string("<outer ") + (row ? "width" : "height") + "=\"" +
                  format_exact(outer, metric ? Unit::millimetre : Unit::inch) + "\"/>");
          INFO(attributes << lines);
          const Layout layout = test::laid_out(lines, attributes);
          const std::vector<Length> parts = parts_of(layout, row);
          for (std::size_t i = 2; i + 1 < parts.size(); ++i) CHECK(parts[i] == parts[1]);
          // Five inches are 127 mm: openings are whole steps. An odd number of steps is shared by
          // two borders and an even number of gaps only where one border takes a step more.
          const std::int64_t left = (outer - inches(5) * count).ticks() / step.ticks();
          const bool is_uneven = count % 2 == 1 && left % 2 == 1;
          CHECK(parts.back() - parts.front() == (is_uneven ? step : Length()));
          CHECK(layout.notes.size() == (is_uneven ? 1 : 0));
        }
      }
    }
  }
}

TEST_CASE("a bottom border of so many times the top one moves no border by a whole step") {
  for (const std::string increment : {"1/16 in", "1/64 in", "1 mm", "0.5 mm"}) {
    const bool metric = increment.find("mm") != std::string::npos;
    const std::string attributes = std::string("unit=\"") + (metric ? "mm" : "in") +
                                   "\" increment=\"" + increment.substr(0, increment.find(' ')) +
                                   "\"";
    const std::int64_t step = parse_length(increment, Unit::inch).value().ticks();
    for (const auto& [ratio, times] : {std::pair("1.17", Rational(117, 100)),
                                       {"1.234", Rational(1234, 1000)},
                                       {"17/13", Rational(17, 13)},
                                       {"7/6", Rational(7, 6)},
                                       {"1.01", Rational(101, 100)}}) {
      for (const std::string outer : {"", "<outer width=\"11 in\" height=\"14 in\"/>"}) {
        const std::string lines =
            "<layers><layer board=\"Oat\"/></layers>" + outer + "<borders bottom-ratio=\"" + ratio +
            "\"/><arrange><opening width=\"5 in\" height=\"6 in\"/></arrange>";
        INFO(attributes << lines);
        const Job job = test::job_of(lines, attributes);
        Job fine = job;
        fine.scale.increment = Length::from_ticks(1);
        const Sides b = lay_out(job).value().borders, exact = lay_out(fine).value().borders;
        for (const Length moved : {b.left - exact.left, b.top - exact.top, b.right - exact.right,
                                   b.bottom - exact.bottom}) {
          CHECK(std::abs(moved.ticks()) <= step);
        }
        const Rational off = abs(Rational(b.bottom.ticks()) - times * Rational(b.top.ticks()));
        // Where the height is given, a step that one border takes the other one gives.
        CHECK(off <= (outer.empty() ? Rational(1, 2) : (times + Rational(1)) / Rational(2)) *
                         Rational(step));
      }
    }
  }
}

TEST_CASE("a rule of so many times another size moves no border far") {
  const std::string lines = R"(
    <layers><layer board="Oat"/></layers><outer width="30"/>
    <arrange><row><opening width="5" height="5"/><gap id="g"/><opening width="5" height="5"/></row>
    </arrange><rules><multiple measure="border.left" of="g" times="1.17"/></rules>)";
  const Layout layout = test::laid_out(lines);
  const Length gap = layout.openings[1].rect.left - layout.openings[0].rect.right;
  const Rational off =
      Rational(layout.borders.left.ticks()) - Rational(117, 100) * Rational(gap.ticks());
  CHECK(abs(off) <= Rational(sixty_fourths(2).ticks()));
  CHECK(layout.borders.right - layout.borders.left <= sixty_fourths(4));
  CHECK(gap >= inches(5));
  REQUIRE(!layout.notes.empty());
  CHECK(std::get<OffBy>(layout.notes.front()).what.kind == layout::Statement::Kind::rule);
  CHECK(test::notes_of(lines).find("border.left 1.17 times g: off by") == 0);
}

TEST_CASE(
    "borders that are alike stay alike on the rule where a rule keeps gaps from being equal") {
  const Layout layout = test::laid_out(R"(
    <layers><layer board="Oat"/></layers><borders left="116"/>
    <arrange><row align="top"><opening width="236" height="180"/><opening width="106" height="156"/>
      <gap size="24"/><opening id="third" width="108" height="94"/><opening width="214" height="214"/>
      </row></arrange>
    <rules><centred what="third" direction="across" strength="strong"/></rules>)",
                                       R"(unit="mm" increment="1")");
  CHECK(layout.borders.right == layout.borders.left);
}

TEST_CASE("a required multiple that few sizes meet is met within a step") {
  const Layout layout = test::laid_out(R"(
    <layers><layer board="Oat"/></layers>
    <arrange><row><opening width="333.4" height="205"/><opening id="b" width="378.4" height="376"/>
      </row></arrange>
    <rules><equal of="border.bottom outer.width" strength="strong"/>
      <multiple measure="border.left" of="b.left" times="1/3"/></rules>)",
                                       R"(unit="mm" increment="0.5")");
  const Rational off = Rational(layout.borders.left.ticks()) -
                       Rational(layout.openings[1].rect.left.ticks()) / Rational(3);
  CHECK(abs(off) <= Rational(millimetres(1).ticks(), 2));
}

TEST_CASE("no border of a random job lies far from where it is with the finest of steps") {
  std::mt19937 random(5);
  int laid = 0, near = 0;
  while (laid < 400) {
    const test::WildJob wild = test::wild_job(random, 5);
    INFO(wild.attributes << wild.lines);
    Job job = wild.job();
    const auto layout = lay_out(job);
    if (!layout) continue;
    ++laid;
    const std::int64_t step = job.scale.increment.ticks();
    job.scale.increment = Length::from_ticks(1);
    const Sides a = layout->borders, b = lay_out(job).value().borders;
    std::int64_t moved = 0;
    for (const Length off :
         {a.left - b.left, a.top - b.top, a.right - b.right, a.bottom - b.bottom}) {
      moved = std::max(moved, std::abs(off.ticks()));
    }
    CHECK(moved <= (static_cast<std::int64_t>(layout->openings.size()) + 5) * step);
    if (moved <= 2 * step) ++near;
  }
  CHECK(near > laid * 95 / 100);
}

namespace {

// A row of openings between given top and bottom borders: its worth on the step, written from the
// words of layout/model.h and solver/snap.h. Lengths are in steps.
struct Row {
  int width;      // what borders and gaps have to make
  int gaps;       // how many
  Rational inch;  // in steps
  Rational top;
  std::vector<Rational> exact;  // near border, gaps, far border

  // Violations level by level, then moves rank by rank.
  using Worth = std::vector<std::vector<Rational>>;

  std::vector<Rational> violations(const std::vector<int>& parts) const {
    const auto square = [](const Rational& value) { return value * value; };
    const Rational near = parts.front(), far = parts.back();
    Rational narrow, spread, off_usual, sum;
    for (std::size_t i = 1; i + 1 < parts.size(); ++i) sum += Rational(parts[i]);
    for (std::size_t i = 1; i + 1 < parts.size(); ++i) {
      const Rational gap = parts[i];
      if (gap < inch) narrow += square(inch - gap);
      spread += square(gap - sum / Rational(gaps));
      off_usual += square(gap - inch);
    }
    const Rational balance = square(near - far) * Rational(near > far ? 2 : 1);
    return {narrow, spread, balance, off_usual, square(near - top) + square(far - top)};
  }

  Worth worth_of(const std::vector<int>& parts) const {
    const auto off = [&](std::size_t i) { return abs(Rational(parts[i]) - exact[i]); };
    std::vector<Rational> gap_moves, position_moves{off(0)};
    Rational place = Rational(parts[0]) - exact[0];
    for (std::size_t i = 1; i + 1 < parts.size(); ++i) {
      gap_moves.push_back(off(i));
      place += Rational(parts[i]) - exact[i];
      position_moves.push_back(abs(place));
    }
    Worth worth{violations(parts), gap_moves, position_moves, {off(0)}, {off(parts.size() - 1)}};
    for (std::size_t rank = 1; rank < worth.size(); ++rank) {
      std::sort(worth[rank].begin(), worth[rank].end(), std::greater<>());
    }
    return worth;
  }

  // Every way to share the width among the parts, none narrower than can be cut and held: on a
  // 4-ply board 1/8 in for a border, 3/16 in for a bar.
  void for_every_sharing(const std::function<void(const std::vector<int>&)>& visit) const {
    std::vector<int> parts;
    const std::function<void(int)> share = [&](int left) {
      constexpr int least_border = 2, least_bar = 3;
      if (static_cast<int>(parts.size()) == gaps + 1) {
        if (left < least_border) return;
        parts.push_back(left);
        visit(parts);
        parts.pop_back();
        return;
      }
      for (int part = parts.empty() ? least_border : least_bar; part <= left; ++part) {
        parts.push_back(part);
        share(left - part);
        parts.pop_back();
      }
    };
    share(width);
  }
};

}  // namespace

// By 1/16 in, and what is to be shared is small, so that all ways can be counted through.
TEST_CASE("no sharing of a row's width among borders and gaps is better than that of the layout") {
  int moved = 0;
  for (const int gaps : {1, 2, 3}) {
    for (int width = 40; width < (gaps == 3 ? 43 : 60); ++width) {
      const std::string lines =
          equal_openings(gaps + 1, true,
                         "<outer width=\"" + std::to_string(width + (gaps + 1) * 80) +
                             "/16\" height=\"11\"/><borders top=\"3\" bottom=\"3\"/>");
      INFO(lines);
      const Job job = test::job_of(lines);
      const auto arrangement =
          layout::arrange(layout::build_model(job, {inches(2), inches(1), Rational(1)}));
      REQUIRE(arrangement.has_value());
      const Rational step = sixty_fourths(4).ticks();
      Row row{width, gaps, Rational(16), Rational(48), {}};
      const auto& model = arrangement->model;
      const auto value = [&](const solver::Linear& form) {
        return arrangement->solution.value(form) / step;
      };
      row.exact.push_back(value(model.border[layout::across].start));
      for (std::size_t i = 1; i < model.openings.size(); ++i) {
        row.exact.push_back(value(model.openings[i].box.span[layout::across].start -
                                  model.openings[i - 1].box.span[layout::across].end));
      }
      row.exact.push_back(value(model.border[layout::across].end));

      std::vector<int> found;
      for (const Length part : parts_of(lay_out(job).value(), true)) {
        REQUIRE(part.ticks() % sixty_fourths(4).ticks() == 0);
        found.push_back(static_cast<int>(part.ticks() / sixty_fourths(4).ticks()));
      }
      const Row::Worth worth = row.worth_of(found);
      if (std::any_of(row.exact.begin(), row.exact.end(),
                      [](const Rational& part) { return !part.is_integer(); })) {
        ++moved;
      }
      bool is_best = true;
      row.for_every_sharing([&](const std::vector<int>& parts) {
        if (row.violations(parts) <= worth.front() && row.worth_of(parts) < worth) is_best = false;
      });
      CHECK(is_best);
    }
  }
  CHECK(moved > 15);
}
