#pragma once

// The sheet in its best look: on as few pages as the smallest type allows, in the largest type that
// does not need more.

#include <functional>

#include "render/cutsheet/flow.h"

namespace mullion::cutsheet {

using Write = std::function<void(Flow&, const Look&)>;

// `date` as in paper::DocumentInfo.
std::string set_on_pages(const paper::PageSize& page, const std::string& title,
                         const std::string& date, const Locale& locale, const Write& write);

}  // namespace mullion::cutsheet
