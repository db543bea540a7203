#include "engine/sheets/batch/batch.h"

#include <algorithm>

namespace mullion {
namespace {

std::vector<LayerBorders> borders_of(const Mat& mat) {
  std::vector<LayerBorders> layers;
  for (const MatLayer& layer : mat.layers) {
    if (layer.windows.empty()) continue;
    Rect all = layer.windows.front().back;
    for (const Window& window : layer.windows) {
      all.left = std::min(all.left, window.back.left);
      all.top = std::min(all.top, window.back.top);
      all.right = std::max(all.right, window.back.right);
      all.bottom = std::max(all.bottom, window.back.bottom);
    }
    layers.push_back({layer.number,
                      {all.left - layer.outer.left, all.top - layer.outer.top,
                       layer.outer.right - all.right, layer.outer.bottom - all.bottom},
                      layer.windows.size()});
  }
  return layers;
}

}  // namespace

int RunGroup::quantity() const {
  int sum = 0;
  for (const Member& member : members) sum += member.quantity;
  return sum;
}

std::vector<RunGroup> run_groups(const std::vector<BatchJob>& jobs) {
  std::vector<RunGroup> groups;
  for (const BatchJob& job : jobs) {
    RunGroup group;
    group.width = job.mat.outer.width();
    group.height = job.mat.outer.height();
    group.layers = borders_of(job.mat);
    auto same = std::find_if(groups.begin(), groups.end(), [&group](const RunGroup& other) {
      return other.width == group.width && other.height == group.height &&
             other.layers == group.layers;
    });
    if (same == groups.end()) same = groups.insert(groups.end(), std::move(group));
    same->members.push_back({job.order, job.quantity});
  }
  std::stable_sort(groups.begin(), groups.end(), [](const RunGroup& a, const RunGroup& b) {
    return a.quantity() > b.quantity();
  });
  return groups;
}

std::vector<BlankOrder> blanks_of(const std::vector<BatchJob>& jobs) {
  std::vector<BlankOrder> all;
  for (const BatchJob& job : jobs) {
    for (BlankOrder& blank : blanks_of(job.mat, job.quantity, job.order)) {
      all.push_back(std::move(blank));
    }
  }
  return all;
}

std::vector<BlankLabel> labels_of(const SheetPlan& plan) {
  std::vector<BlankLabel> labels;
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      for (const PlacedBlank& placed : blanks_in(sheet.pattern, plan.limits.kerf)) {
        const BlankCopy& copy = sheet.blanks[static_cast<std::size_t>(placed.blank)];
        const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
        labels.push_back({line.order, line.layer, board.board.name, copy.copy, line.quantity,
                          line.width, line.height, sheet.number,
                          line.order + "/" + std::to_string(line.layer_number) + "/" +
                              std::to_string(copy.copy)});
      }
    }
  }
  return labels;
}

}  // namespace mullion
