#include "engine/job/layer_name.h"

#include "engine/job/parts.h"

namespace mullion {

std::string name_on_paper(const std::string& name, int number, const Locale& locale) {
  if (name != usual_layer_name(static_cast<std::size_t>(number))) return name;
  return number == 1 ? locale.say("Top mat") : locale.say("Layer %1", number);
}

std::string board_on_paper(const Layer& layer, int number, const Locale& locale) {
  return layer.board.empty() ? name_on_paper(layer.name, number, locale) : layer.board;
}

}  // namespace mullion
