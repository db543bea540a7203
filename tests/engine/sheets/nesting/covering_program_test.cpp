#include "engine/sheets/nesting/covering_program.h"

#include <catch2/catch.hpp>
#include <random>
#include <sstream>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

struct Programme {
  std::vector<double> demands;
  std::vector<std::optional<double>> limits;
  std::vector<CoveringColumn> columns;
};

Programme random_programme(std::mt19937& random) {
  Programme programme;
  for (auto i = 2 + random() % 10; i > 0; --i) {
    programme.demands.push_back(static_cast<double>(random() % 20));
  }
  programme.limits = {std::nullopt, static_cast<double>(random() % 6)};
  for (auto j = 5 + random() % 40; j > 0; --j) {
    CoveringColumn column;
    column.stock = static_cast<int>(random() % 2);
    column.cost = column.stock == 0 ? 12 : 5;
    for (std::size_t i = 0; i < programme.demands.size(); ++i) {
      if (random() % 3 == 0) column.covers.emplace_back(static_cast<int>(i), 1 + random() % 4);
    }
    programme.columns.push_back(column);
  }
  return programme;
}

constexpr double penalty = 500;

// The same programme in CPLEX LP format, as GLPK reads it.
std::string as_text(const Programme& programme) {
  std::ostringstream text, limits;
  text << "Minimize\n cost: 0 zero";
  for (std::size_t j = 0; j < programme.columns.size(); ++j) {
    text << " + " << programme.columns[j].cost << " x" << j;
    if (programme.columns[j].stock == 1) limits << " + x" << j;
  }
  for (std::size_t i = 0; i < programme.demands.size(); ++i) text << " + " << penalty << " u" << i;
  text << "\nSubject To\n";
  for (std::size_t i = 0; i < programme.demands.size(); ++i) {
    text << " d" << i << ": u" << i;
    for (std::size_t j = 0; j < programme.columns.size(); ++j) {
      for (const auto& [demand, count] : programme.columns[j].covers) {
        if (demand == static_cast<int>(i)) text << " + " << count << " x" << j;
      }
    }
    text << " >= " << programme.demands[i] << "\n";
  }
  text << " s: 0 zero" << limits.str() << " <= " << *programme.limits[1] << "\nEnd\n";
  return text.str();
}

}  // namespace

TEST_CASE("the simplex method reaches the optimum that GLPK finds") {
  const std::string folder = oracle::scratch_folder("covering_program");
  std::mt19937 random(5);
  for (int round = 0; round < 25; ++round) {
    const Programme programme = random_programme(random);
    CoveringProgram program(programme.demands, programme.limits,
                            std::vector<double>(programme.demands.size(), penalty));
    for (const CoveringColumn& column : programme.columns) program.add(column);
    program.solve();
    double dual_value = 0;
    for (std::size_t i = 0; i < programme.demands.size(); ++i) {
      dual_value += programme.demands[i] * program.duals()[i];
    }
    dual_value += *programme.limits[1] * program.duals().back();

    oracle::write_file(folder + "/programme.lp", as_text(programme));
    const oracle::Run glpk = oracle::run(
        {"glpsol", "--lp", folder + "/programme.lp", "--write", folder + "/solution.txt"});
    REQUIRE(glpk.status == 0);
    // "s bas ROWS COLUMNS f f OBJECTIVE": the line of the basic solution.
    const std::string solution = oracle::read_file(folder + "/solution.txt");
    const std::size_t line = solution.find("\ns bas ");
    REQUIRE(line != std::string::npos);
    std::istringstream words(solution.substr(line));
    std::string word;
    for (int i = 0; i < 6; ++i) words >> word;
    double optimum = -1;
    words >> optimum;
    INFO("round " << round);
    CHECK(dual_value == Approx(optimum).margin(1e-6));
  }
}

TEST_CASE("prices of any size are taken, and the optimum keeps its digits") {
  for (const double scale : {1e-6, 1.0, 1e12}) {
    CoveringProgram program({3, 5}, {std::nullopt}, {1000 * scale, 1000 * scale});
    program.add({2 * scale, 0, {{0, 1}, {1, 1}}});
    program.add({1 * scale, 0, {{1, 1}}});
    program.solve();
    // Three of the first cover all of the first demand, two of the second what is left.
    CHECK(program.amounts()[0] == Approx(3));
    CHECK(program.amounts()[1] == Approx(2));
    CHECK(program.duals()[0] == Approx(1 * scale));
    CHECK(program.duals()[1] == Approx(1 * scale));
    program.set_right_sides({0, 4}, {});
    program.solve();
    CHECK(program.amounts()[0] + program.amounts()[1] == Approx(4));
  }
}
