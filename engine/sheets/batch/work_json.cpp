#include "engine/sheets/batch/work_json.h"

#include "engine/cuts/sheet/plan_json.h"

namespace mullion {

using Json = nlohmann::ordered_json;

Json work_json(const std::vector<WorkPart>& work) {
  Json parts = Json::array();
  for (const WorkPart& part : work) {
    Json set_aside = Json::array();
    for (const SetAside& fallout : part.set_aside) {
      set_aside.push_back({{"order", fallout.order},
                           {"layer", fallout.layer},
                           {"copy", fallout.copy},
                           {"opening", fallout.opening},
                           {"sheet", fallout.sheet}});
    }
    parts.push_back({{"part", parts.size() + 1},
                     {"sheets", part.sheets},
                     {"run", run_json(part.run)},
                     {"setAside", set_aside}});
  }
  return parts;
}

std::string work_to_json(const std::vector<WorkPart>& work) {
  const Json out = {{"format", "mullion work 1"}, {"parts", work_json(work)}};
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace mullion
