#include "engine/xml/problem.h"

#include <catch2/catch.hpp>

using namespace mullion;

TEST_CASE("a problem names its file, line, column and code") {
  CHECK(to_string({Severity::error, "job-length", "no length", {3, 14}, "a.xml"}) ==
        "a.xml:3:14: error: no length [job-length]");
  CHECK(to_string({Severity::warning, "", "thin bar", {}, ""}) == "warning: thin bar");
}

TEST_CASE("a slip of the pen finds the near name, a different word finds none") {
  const std::vector<std::string_view> names{"opening", "row", "column", "gap"};
  CHECK(near_name("openning", names) == "opening");
  CHECK(near_name("colum", names) == "column");
  CHECK(near_name("rwo", names) == "row");
  CHECK(near_name("opennign", names) == "opening");
  CHECK(near_name("moulding", names).empty());
}
