#include "tests/render/proof/chromium.h"

#include <stdexcept>
#include <vector>

#include "tests/oracle/program.h"

namespace browser {
namespace {

std::string run(std::vector<std::string> words, const std::string& page) {
  std::vector<std::string> all{"timeout",
                               "60",
                               "chromium",
                               "--headless",
                               "--no-sandbox",
                               "--disable-gpu",
                               "--disable-quic",
                               "--no-first-run",
                               "--disable-background-networking",
                               "--disable-component-update",
                               "--disable-sync",
                               "--disable-dev-shm-usage",
                               "--hide-scrollbars",
                               "--force-device-scale-factor=1",
                               "--virtual-time-budget=5000",
                               "--host-resolver-rules=MAP * ~NOTFOUND",
                               "--user-data-dir=" + oracle::scratch_folder("browser")};
  all.insert(all.end(), words.begin(), words.end());
  all.push_back("file://" + page);
  const auto result = oracle::run(all);
  if (result.status != 0) throw std::runtime_error("chromium failed: " + result.err);
  return result.out;
}

}  // namespace

void screenshot(const std::string& page, int width, int height, const std::string& png) {
  run({"--screenshot=" + png,
       "--window-size=" + std::to_string(width) + "," + std::to_string(height)},
      page);
}

std::string dom_after_scripts(const std::string& page) {
  return run({"--dump-dom", "--window-size=1000,1400"}, page);
}

}  // namespace browser
