#include "tests/engine/edit/edited.h"

#include <stdexcept>

namespace test {

using namespace mullion;

std::string edited(const std::string& text, const edit::Edit& edit) {
  const auto after = edit::apply(text, edit);
  if (!after) throw std::runtime_error(to_string(after.error().front()));
  const auto back = edit::apply(after->text, edit::inverse_of(*after));
  if (!back || back->text != text) throw std::runtime_error("the inverse gives another text");
  return after->text;
}

std::string refused(const std::string& text, const edit::Edit& edit) {
  const auto after = edit::apply(text, edit);
  if (after) return {};
  return after.error().front().message + " [" + after.error().front().code + "]";
}

}  // namespace test
