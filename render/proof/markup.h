#pragma once

// Text made safe for XML and HTML, in content and in double-quoted attributes.

#include <string>
#include <string_view>

namespace mullion::proof {

std::string escaped(std::string_view text);

}  // namespace mullion::proof
