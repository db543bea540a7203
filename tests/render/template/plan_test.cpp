// The lines that a template shows against the cuts of the plan, both ways: read from the path data
// of the SVG's groups, and in the PDF by MuPDF. None may be missing, longer, shorter or too many.

#include "engine/cuts/plan/plan.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <map>
#include <optional>
#include <set>

#include "engine/job/read.h"
#include "render/template/template.h"
#include "tests/engine/cuts/mats.h"
#include "tests/how_many.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/made.h"

using namespace mullion;
using oracle::Spot;

namespace {

constexpr double tolerance = 0.002;  // mm; the SVG has four decimals, a tick is 0.0006 mm

// A straight piece from one end to the other, or a curved one as its ends and control points.
using Way = std::vector<Spot>;

Way in_one_sense(Way way) {
  const auto before = [](const Spot& a, const Spot& b) {
    return std::abs(a.x - b.x) > tolerance ? a.x < b.x : a.y < b.y - tolerance;
  };
  if (before(way.back(), way.front())) std::reverse(way.begin(), way.end());
  return way;
}

bool alike(const Way& a, const Way& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Spot& p, const Spot& q) {
    return std::hypot(p.x - q.x, p.y - q.y) < tolerance;
  });
}

// What of the one is not in the other, either way.
std::string difference(std::vector<Way> drawn, const std::vector<Way>& planned) {
  for (const Way& way : planned) {
    const auto found = std::find_if(drawn.begin(), drawn.end(),
                                    [&](const Way& other) { return alike(way, other); });
    if (found == drawn.end()) {
      return "not drawn: from " + std::to_string(way.front().x) + ", " +
             std::to_string(way.front().y) + " to " + std::to_string(way.back().x) + ", " +
             std::to_string(way.back().y);
    }
    drawn.erase(found);
  }
  if (drawn.empty()) return "";
  return "not planned: from " + std::to_string(drawn.front().front().x) + ", " +
         std::to_string(drawn.front().front().y);
}

// Where the file moves the board to.
Spot board_moved(const std::string& svg) {
  const std::size_t board = svg.find("<g id=\"board\">");
  const std::string word = "<g transform=\"translate(";
  const std::size_t at = svg.find(word, board);
  REQUIRE(at < svg.find("<path", board));
  char* next = nullptr;
  const double x = std::strtod(svg.c_str() + at + word.size(), &next);
  return {x, std::strtod(next, nullptr)};
}

// The subpaths of solid strokes in the group of that id, in mm.
std::vector<Way> drawn_in(const std::string& svg, const std::string& id) {
  std::vector<Way> out;
  std::size_t at = svg.find("<g id=\"" + id + "\">");
  if (at == std::string::npos) return out;
  const Spot moved = board_moved(svg);
  const std::size_t end = svg.find("</g>", at);
  while ((at = svg.find("<path", at)) < end) {
    const std::size_t close = svg.find("/>", at);
    const std::string path = svg.substr(at, close - at);
    at = close;
    if (path.find("dasharray") != std::string::npos) continue;
    if (path.find("fill=\"none\"") == std::string::npos) continue;
    const char* data = path.c_str() + path.find(" d=\"") + 4;
    Spot start, here;
    const auto line_to = [&](Spot to) {
      if (std::hypot(to.x - here.x, to.y - here.y) > tolerance) {
        out.push_back(in_one_sense({here, to}));
      }
      here = to;
    };
    const auto spot = [&] {
      char* next = nullptr;
      const double x = std::strtod(data, &next);
      const double y = std::strtod(next + 1, &next);
      data = next + (*next == ' ' ? 1 : 0);
      return Spot{moved.x + x, moved.y + y};
    };
    while (*data != '"') {
      const char command = *data++;
      if (command == 'M') {
        start = here = spot();
      } else if (command == 'L') {
        line_to(spot());
      } else if (command == 'C') {
        const Spot first = spot(), second = spot(), to = spot();
        out.push_back(in_one_sense({here, first, second, to}));
        here = to;
      } else {
        REQUIRE(command == 'Z');
        line_to(start);
      }
    }
  }
  return out;
}

// The plan's cuts on the page.
class Planned {
 public:
  Planned(const CuttingPlan& plan, const TemplatePage& page) : plan_(plan), page_(page) {}

  std::vector<Way> ways(const Stage& stage) {
    out_.clear();
    for (const SetUp& set_up : stage.set_ups) {
      for (const Placement& placement : set_up.placements) {
        for (const BevelCut& cut : placement.cuts) add(placement.edge, cut);
      }
    }
    for (const SkewCut& cut : stage.skew_cuts) add(cut);
    for (const CurveCut& curve : stage.curves) {
      for (const CurveLine& line : curve.lines) add(line);
    }
    return std::move(out_);
  }

 private:
  Spot spot(Vector v) const {
    const double right = to_millimetres(page_.board_left + plan_.outer.width());
    return {right - v.x / ticks_per_mm, to_millimetres(page_.board_top) + v.y / ticks_per_mm};
  }
  // What is shorter than the tolerance is not told from nothing in the file either.
  void add_line(Vector from, Vector to) {
    if (norm(to - from) / ticks_per_mm <= tolerance) return;
    out_.push_back(in_one_sense({spot(from), spot(to)}));
  }

  void add(BoardEdge edge, const BevelCut& cut) {
    const BoardEdge near = near_edge(edge, plan_.cutter.side);
    const auto end = [&](Length along) {
      return vector_of(point_at(edge, cut.distance, near, along, plan_.outer));
    };
    const bool pulled = cut.start.line > cut.end.line;
    const CutEnd &far = pulled ? cut.start : cut.end, &low = pulled ? cut.end : cut.start;
    add_line(end(far.line + far.over_cut), end(low.line - low.over_cut));
  }

  void add(const SkewCut& cut) {
    const Vector from = vector_of(cut.from), to = vector_of(cut.to);
    const Vector ahead = unit(to - from);
    add_line(from - ahead * static_cast<double>(cut.from_over_cut.ticks()),
             to + ahead * static_cast<double>(cut.to_over_cut.ticks()));
  }

  void add(const CurveLine& line) {
    std::vector<std::pair<Vector, Vector>> directions;  // of each part's start and end
    Vector here = vector_of(line.line.start);
    std::vector<Vector> corners{here};
    for (const Segment& s : line.line.segments) {
      const Vector to = vector_of(s.to);
      Vector first = to - here, last = first;
      if (s.curved) {
        const Vector a = vector_of(s.control1), b = vector_of(s.control2);
        out_.push_back(in_one_sense({spot(here), spot(a), spot(b), spot(to)}));
        first = norm(a - here) > 0 ? a - here : b - here;
        last = norm(to - b) > 0 ? to - b : to - a;
      }
      if (!s.curved) add_line(here, to);
      directions.emplace_back(unit(first), unit(last));
      corners.push_back(to);
      here = to;
    }
    const std::size_t count = directions.size();
    for (std::size_t i = 0; i <= count; ++i) {
      if (line.closed && i == 0) continue;
      const double over = static_cast<double>(line.over_cuts[i].ticks());
      if (over == 0) continue;
      if (i > 0) add_line(corners[i], corners[i] + directions[i - 1].second * over);
      if (i < count || line.closed) {
        add_line(corners[i], corners[i] - directions[i % count].first * over);
      }
    }
  }

  const CuttingPlan& plan_;
  TemplatePage page_;
  std::vector<Way> out_;
};

// Ovals are set, not followed: the plan has their axes, and the template the pieces of their
// outline.
std::vector<Way> without_ovals(std::vector<Way> drawn, const CuttingPlan& plan, const Stage& stage,
                               const TemplatePage& page) {
  for (const CurveCut& curve : stage.curves) {
    if (curve.kind != CurveKind::oval) continue;
    const double right = to_millimetres(page.board_left + plan.outer.right - curve.back.left);
    const double left = right - to_millimetres(curve.back.width());
    const double top = to_millimetres(page.board_top + curve.back.top);
    const double bottom = top + to_millimetres(curve.back.height());
    Spot low{1e9, 1e9}, high{-1e9, -1e9};
    std::erase_if(drawn, [&](const Way& way) {
      const bool inside = std::all_of(way.begin(), way.end(), [&](const Spot& p) {
        return p.x > left - tolerance && p.x < right + tolerance && p.y > top - tolerance &&
               p.y < bottom + tolerance;
      });
      if (!inside) return false;
      for (const Spot& p : {way.front(), way.back()}) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
      }
      return true;
    });
    CHECK(low.x == Approx(left).margin(0.01));
    CHECK(low.y == Approx(top).margin(0.01));
    CHECK(high.x == Approx(right).margin(0.01));
    CHECK(high.y == Approx(bottom).margin(0.01));
  }
  return drawn;
}

// A spacer's windows are cut as rectangles, whatever their shape: each is the box of what is drawn.
Stage with_boxes(Stage stage) {
  const auto add = [&](const Rect& box) {
    CurveCut curve;
    curve.back = box;
    stage.curves.push_back(curve);
  };
  for (const SpacerWindow& window : stage.squares) add(window.back);
  if (stage.strips.empty()) return stage;
  const Rect& b = stage.blank;
  std::map<BoardEdge, Length> width;
  for (const SpacerStrip& strip : stage.strips) width[strip.edge] = strip.width;
  add({b.left + width[BoardEdge::left], b.top + width[BoardEdge::top],
       b.right - width[BoardEdge::right], b.bottom - width[BoardEdge::bottom]});
  return stage;
}

// What the template of any layer shows otherwise than the plan cuts it.
std::string difference(const Job& job, const Mat& mat, const CutterProfile& cutter) {
  CutterProfile endless = cutter;  // a template is drawn for what is too large, too
  endless.longest_cut = endless.widest_board = inches(200);
  endless.reach = endless.thickest_board = endless.deepest_cut = endless.deepest_in_two = {};
  const Cuts cuts = cuts_of(mat, endless);
  const auto plan = plan_cutting(mat, endless);
  if (!plan) return plan.error().front().message;
  Planned planned(*plan, template_page(mat));
  for (const Stage& planned_stage : plan->stages) {
    const Stage stage = with_boxes(planned_stage);
    const bool groove = stage.kind == StageKind::groove;
    TemplateOptions options;
    options.format = paper::Format::svg;
    options.layer = stage.layer;
    const auto svg = render_template(job, cuts, options);
    if (!svg) return svg.error().front().message;
    const std::string number = std::to_string(stage.layer);
    const auto drawn = drawn_in(*svg, "layer-" + number + (groove ? "-grooves" : "-cut-lines"));
    const std::string found =
        difference(without_ovals(drawn, *plan, stage, template_page(mat)), planned.ways(stage));
    if (!found.empty()) return "layer " + number + (groove ? " groove " : " ") + found;
    // The blank is that of the stage, in its place.
    const double left =
        to_millimetres(template_page(mat).board_left + (mat.outer.right - stage.blank.right));
    const double top = to_millimetres(template_page(mat).board_top + stage.blank.top);
    const double right = left + to_millimetres(stage.blank.width());
    const double bottom = top + to_millimetres(stage.blank.height());
    std::vector<Way> blank;
    for (const auto& [from, to] : {std::pair<Spot, Spot>{{left, top}, {right, top}},
                                   {{right, top}, {right, bottom}},
                                   {{left, bottom}, {right, bottom}},
                                   {{left, top}, {left, bottom}}}) {
      blank.push_back(in_one_sense({from, to}));
    }
    const std::string edge = difference(drawn_in(*svg, "layer-" + number + "-outer-edge"), blank);
    if (!edge.empty()) return "the blank of layer " + number + " " + edge;
  }
  return "";
}

}  // namespace

// Each job at every fifth degree and some that are usual, and every degree in some jobs.
TEST_CASE("at bevels from 30 to 90 degrees the templates of all jobs show the plan's cuts") {
  std::map<int, int> compared;
  int first = 30;
  for (const std::string& path : made::all_jobs()) {
    const Job job = read_job(path).value();
    std::set<int> bevels{30, 45, 60, 90};
    for (int degrees = first; degrees <= 90; degrees += 5) bevels.insert(degrees);
    first = first == 34 ? 30 : first + 1;
    for (const int degrees : bevels) {
      const auto mat = mats::mat_at(job, degrees);
      if (!mat) continue;  // so flat that nothing is left between the bevels
      INFO(path << " at " << degrees);
      REQUIRE(difference(job, *mat, generic_cutter_for(job.scale.unit)) == "");
      ++compared[degrees];
    }
  }
  CHECK(compared.size() == 61);
  CHECK(compared[90] >= 30);
}

TEST_CASE("the templates of random mats on random cutters show the plan's cuts") {
  std::mt19937 random(27);
  Job job;
  for (int i = 0; i < test::how_many(150, 500); ++i) {
    const Mat mat = mats::random_mat(random);
    CutterProfile cutter = mats::random_cutter(random);
    cutter.over_cuts.front().distance = Length::from_ticks(static_cast<int>(random() % 9000));
    INFO("mat " << i);
    REQUIRE(difference(job, mat, cutter) == "");
  }
}

TEST_CASE("a plan with another over-cut, or a line of another place, would be noticed") {
  const Job job = read_job(oracle::gallery("double-mat.xml")).value();
  const Mat mat = mats::mat_at(job, 45).value();
  const Cuts cuts = cuts_of(mat);
  CuttingPlan plan = plan_cutting(mat, cuts.cutter).value();
  TemplateOptions options;
  options.format = paper::Format::svg;
  options.layer = 2;
  const auto drawn = drawn_in(render_template(job, cuts, options).value(), "layer-2-cut-lines");
  Planned planned(plan, template_page(mat));
  REQUIRE(difference(drawn, planned.ways(plan.stages[1])) == "");
  BevelCut& cut = plan.stages[1].set_ups[0].placements[0].cuts[0];
  cut.start.over_cut += Length::from_ticks(8);
  CHECK(difference(drawn, planned.ways(plan.stages[1])) != "");
  cut.start.over_cut -= Length::from_ticks(8);
  cut.distance += Length::from_ticks(8);
  CHECK(difference(drawn, planned.ways(plan.stages[1])) != "");
}

TEST_CASE("MuPDF finds the plan's over-cuts in the PDF, and that the lines end there") {
  const std::string folder = oracle::scratch_folder("template-bevels");
  const std::string source = oracle::read_file(oracle::gallery("double-mat.xml"));
  for (const int degrees : {30, 45, 60, 90}) {
    std::string xml = source;
    xml.insert(xml.find("<layers") + 7, " bevel=\"" + std::to_string(degrees) + "\"");
    oracle::write_file(folder + "/job.xml", xml);
    const Mat mat = made::mat_of(folder + "/job.xml");
    const Cuts cuts = cuts_of(mat);
    const auto pages = oracle::drawn_pages(
        made::template_of(folder + "/job.xml", folder + "/" + std::to_string(degrees) + ".pdf"));
    REQUIRE(pages.size() == 2);
    const TemplatePage page = template_page(mat);
    for (std::size_t i = 0; i < 2; ++i) {
      for (const StraightLine& line : cuts.layers[i].lines.straight) {
        const Point a = beyond(line.ends[0].at, line.ends[1].at, line.ends[0].over_cut);
        const Point b = beyond(line.ends[1].at, line.ends[0].at, line.ends[1].over_cut);
        const Point c = beyond(b, a, millimetres(1));
        const auto spot = [&](const Point& p) {
          return Spot{to_points(page.board_left + mat.outer.width() - p.x),
                      to_points(page.board_top + p.y)};
        };
        INFO(degrees << " degrees, layer " << i + 1);
        CHECK(oracle::shows_line(pages[i], spot(a), spot(b), 0.0283));
        CHECK_FALSE(oracle::shows_line(pages[i], spot(a), spot(c), 0.0283));
      }
    }
  }
}
