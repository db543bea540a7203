#include <catch2/catch.hpp>

#include "engine/locale/locale.h"
#include "tests/oracle/program.h"

// The catalogues, judged by GNU gettext's own tools.

namespace {

std::string catalogue(std::string_view language) {
  return std::string(MULLION_SOURCE) + "/engine/locale/translations/" + std::string(language) +
         ".po";
}

void for_each_language(void (*check)(const std::string& path)) {
  for (const std::string_view language : mullion::Locale::languages()) {
    if (language == "en") continue;
    INFO(language);
    check(catalogue(language));
  }
}

std::string messages_of_sources() {
  const std::string path = oracle::scratch_folder("messages") + "/sources.pot";
  const auto run =
      oracle::run({std::string(MULLION_SOURCE) + "/.ci/translations", "extract", path});
  INFO(run.err);
  REQUIRE(run.status == 0);
  return path;
}

}  // namespace

TEST_CASE("every message of the sources is translated (.ci/translations, then fill in)") {
  static const std::string messages = messages_of_sources();
  for_each_language([](const std::string& path) {
    const auto run = oracle::run({"msgcmp", path, messages});
    INFO(run.err);
    CHECK(run.status == 0);
  });
}

TEST_CASE("no catalogue keeps a message that is gone from the sources (.ci/translations)") {
  static const std::string messages = messages_of_sources();
  for_each_language([](const std::string& path) {
    const auto run = oracle::run({"msgcmp", "--use-untranslated", messages, path});
    INFO(run.err);
    CHECK(run.status == 0);
  });
}

TEST_CASE("every translation has the places of its message") {
  for_each_language([](const std::string& path) {
    const auto run = oracle::run({"msgfmt", "--check-format", "-o", "/dev/null", path});
    INFO(run.err);
    CHECK(run.status == 0);
    CHECK(run.err.empty());
  });
}
