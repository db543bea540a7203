#include "tests/engine/mat/mats.h"

#include <stdexcept>

#include "tests/engine/layout/languages.h"

namespace test {

using namespace mullion;

const Window& Built::window(int layer, int opening) const {
  for (const Window& window : mat.layers.at(static_cast<std::size_t>(layer) - 1).windows) {
    if (serves(window, opening)) return window;
  }
  throw std::runtime_error("no window");
}

Sides Built::inset(int layer, int opening) const {
  const Rect& top = layout.openings.at(static_cast<std::size_t>(opening) - 1).rect;
  const Rect& back = window(layer, opening).back;
  return {back.left - top.left, back.top - top.top, top.right - back.right,
          top.bottom - back.bottom};
}

Built built(const std::string& lines, const std::string& attributes) {
  const Job job = job_of(lines, attributes);
  const Layout layout = laid_out(lines, attributes);
  const auto mat = build_mat(job, layout);
  if (!mat) throw std::runtime_error(to_string(mat.error().front()));
  return {job, layout, *mat};
}

std::string refusal_of(const std::string& lines, const std::string& attributes) {
  const Job job = job_of(lines, attributes);
  const Layout layout = laid_out(lines, attributes);
  const auto mat = build_mat(job, layout);
  std::string out;
  if (mat) return out;
  check_languages([&](const Locale& locale) { return build_mat(job, layout, locale).error(); });
  for (const Problem& problem : mat.error()) out += to_string(problem) + "\n";
  return out;
}

namespace {

Problems problems_of(const Built& built) {
  const auto told = [&](const Locale& locale) {
    return check_mat(built.job, built.layout, built.mat, locale);
  };
  check_languages(told);
  return told({});
}

}  // namespace

std::string findings_of(const Built& built) {
  std::string out;
  for (const Problem& problem : problems_of(built)) {
    if (out.find(problem.code) == std::string::npos) out += (out.empty() ? "" : " ") + problem.code;
  }
  return out;
}

std::string message_of(const Built& built, const std::string& code) {
  for (const Problem& problem : problems_of(built)) {
    if (problem.code == code) return problem.message;
  }
  throw std::runtime_error("no finding is " + code + ", but " + findings_of(built));
}

}  // namespace test
