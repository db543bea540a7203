#include "render/proof/words.h"

#include <glib.h>

namespace mullion::proof {

std::string upper_case(const std::string& text) {
  gchar* upper = g_utf8_strup(text.data(), static_cast<gssize>(text.size()));
  std::string out(upper);
  g_free(upper);
  return out;
}

}  // namespace mullion::proof
