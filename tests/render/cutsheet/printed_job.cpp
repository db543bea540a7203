#include "printed_job.h"

#include <filesystem>

#include "engine/job/read.h"
#include "render/cutsheet/cutsheet.h"
#include "tests/oracle/program.h"

namespace printed {

using namespace mullion;

std::vector<oracle::DrawnPage> pages_of(const CuttingPlan& plan) {
  static const std::string folder = oracle::scratch_folder("printed-sheet");
  const std::string path = folder + "/sheet.pdf";
  oracle::write_file(path, render_cutsheet(plan));
  return oracle::drawn_pages(path);
}

Sheet::Sheet(const Mat& of, const CuttingPlan& plan)
    : mat(of),
      cutter(mats::ideal(plan.cutter)),
      templates(nlohmann::json::parse(plan_to_json(plan))),
      pages(pages_of(plan)) {
  // Rounding of what is never seen is not told.
  for (const Stage& stage : plan.stages) {
    if (stage.kind == StageKind::spacer) slack = setting_step(plan.cutter.scale) * 2;
  }
  for (const PlanNote& note : plan.notes) {
    // A line may be off by guide, block and mark together, and so may what it is held against.
    if (const auto* rounded = std::get_if<RoundedSettings>(&note)) slack = rounded->step * 2;
  }
}

std::string Sheet::outcome(const std::vector<oracle::DrawnPage>& shown, unsigned lie) const {
  const Told told = plan_of(parts_of(shown), {cutter, &mat, templates, slack});
  if (!told.faults.empty()) return told.faults.front();
  return mats::difference(mat, told.plan.dump(), cutter, lie, slack);
}

namespace {

std::optional<Mat> random_piece(std::mt19937& random, std::string& name) {
  if (random() % 2 == 0) return mats::random_mat(random);
  name = mats::random_job(random);
  const Job job = parse_job(name, "random.xml").value();
  const auto layout = lay_out(job);
  if (!layout) return std::nullopt;
  auto mat = build_mat(job, *layout);
  return mat ? std::optional(std::move(*mat)) : std::nullopt;
}

}  // namespace

int each_random_plan(unsigned seed, int count, const std::function<void(const RandomPlan&)>& take) {
  std::mt19937 random(seed);
  int taken = 0;
  for (int i = 0; i < count; ++i) {
    const CutterProfile cutter = mats::random_cutter(random);
    PlanOptions options;
    options.stacked = random() % 3 != 0;
    options.quantity = random() % 4 == 0 ? 12 : 1;
    options.way = mats::random_way(random, cutter);
    RandomPlan out;
    out.lie = static_cast<unsigned>(random());
    auto mat = random_piece(random, out.name);
    if (!mat) continue;
    out.mat = std::move(*mat);
    auto plan = plan_cutting(out.mat, cutter, options);
    if (!plan) continue;
    out.plan = std::move(*plan);
    out.name = "job " + std::to_string(i) + ", " + name_of(out.plan.way) + " " + out.name;
    take(out);
    ++taken;
  }
  return taken;
}

int each_gallery_plan(const std::function<void(const GalleryPlan&)>& take) {
  int taken = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const Job job = read_job(entry.path().string()).value();
    GalleryPlan out{entry.path().filename(), build_mat(job, lay_out(job).value()).value(), {}};
    out.plan = plan_cutting(out.mat, generic_cutter_for(job.scale.unit)).value();
    take(out);
    ++taken;
  }
  return taken;
}

}  // namespace printed
