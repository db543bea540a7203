#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

TEST_CASE("explain tells a code's meaning and what to do, and lists all without one") {
  const oracle::Run one = oracle::mullion({"explain", "check-bar-thin"});
  REQUIRE(one.status == 0);
  CHECK(one.out.rfind("check-bar-thin (warning): a bar between openings is thin", 0) == 0);
  CHECK(one.out.find("\nWhat to do: ") != std::string::npos);
  const oracle::Run all = oracle::mullion({"explain"});
  REQUIRE(all.status == 0);
  for (const char* code : {"check-not-held ", "layout-conflict ", "job-xml ", "stock-in-use "}) {
    CHECK(all.out.find(code) != std::string::npos);
  }
}

TEST_CASE("explain proposes the nearest code for one that there is not") {
  const oracle::Run run = oracle::mullion({"explain", "check-bar-thinn"});
  CHECK(run.status == 2);
  CHECK(run.err.find("did you mean check-bar-thin?") != std::string::npos);
}
