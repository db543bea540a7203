#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"

namespace {

using oracle::DrawnPage;

std::vector<std::string> gallery_jobs() {
  std::vector<std::string> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() == ".xml") jobs.push_back(entry.path());
  }
  std::sort(jobs.begin(), jobs.end());
  return jobs;
}

std::vector<DrawnPage> proof_of(const std::vector<std::string>& jobs, bool priced) {
  const std::string pdf = oracle::scratch_folder("proof-pages") + "/p.pdf";
  std::vector<std::string> words{"proof", "-o", pdf, "--language", "en"};
  if (priced) {
    for (const char* word : {"--prices", "--shop"}) {
      words.emplace_back(word);
      words.push_back(
          oracle::gallery(word == std::string("--shop") ? "shop/shop.xml" : "shop/prices.xml"));
    }
  }
  words.insert(words.end(), jobs.begin(), jobs.end());
  const oracle::Run run = oracle::mullion(words);
  INFO(run.err);
  REQUIRE(run.status == 0);
  return oracle::drawn_pages(pdf);
}

// Letter (ANSI/ASME Y14.1, size A) or A4 (ISO 216), to a tenth of a point.
bool is_paper(const DrawnPage& page) {
  const auto near = [](double a, double b) { return std::abs(a - b) < 0.1; };
  return (near(page.width, 612) && near(page.height, 792)) ||
         (near(page.width, 595.28) && near(page.height, 841.89));
}

std::string text_of_all(const std::vector<DrawnPage>& pages) {
  std::string text;
  for (const DrawnPage& page : pages) text += oracle::text_of(page);
  return text;
}

void check_pages(const std::vector<DrawnPage>& pages) {
  for (const DrawnPage& page : pages) {
    CHECK(is_paper(page));
    for (const oracle::Label& label : page.labels) {
      INFO(label.text);
      CHECK(label.at.x >= 30);
      CHECK(label.at.y >= 30);
      CHECK(label.at.x <= page.width - 30);
      CHECK(label.at.y <= page.height - 30);
    }
  }
}

}  // namespace

TEST_CASE("every page of every gallery job's proof is of the paper") {
  for (const std::string& job : gallery_jobs()) {
    INFO(job);
    const auto pages = proof_of({job}, true);
    CHECK(pages.size() == 1);
    check_pages(pages);
  }
}

TEST_CASE("choices that one page does not hold go on, each whole, to the line that is signed") {
  const std::vector<std::string> jobs = gallery_jobs();
  const std::vector<std::string> six(jobs.begin(), jobs.begin() + 6);
  const auto pages = proof_of(six, true);
  REQUIRE(pages.size() > 1);
  check_pages(pages);
  const std::string text = text_of_all(pages);
  for (const char letter : {'A', 'B', 'C', 'D', 'E', 'F'}) {
    CHECK(text.find(std::string(1, letter) + "\n") != std::string::npos);
  }
  CHECK(oracle::text_of(pages.back()).find("Signature") != std::string::npos);
  const std::string last = std::to_string(pages.size());
  CHECK(oracle::text_of(pages.back()).find("page " + last + " of " + last) != std::string::npos);
}

TEST_CASE("a list longer than a page goes on, each line once and none cut through") {
  std::string pictures, rows;
  constexpr int columns = 10, count = 80;
  for (int i = 0; i < count; ++i) {
    const std::string id = "p" + std::to_string(i);
    pictures += "<picture id=\"" + id + "\" width=\"" + std::to_string(20 + i) + "/16\" height=\"" +
                std::to_string(24 + i * 7 % 41) + "/16\"/>";
    if (i % columns == 0) rows += i == 0 ? "<row>" : "</row><row>";
    rows += "<opening picture=\"" + id + "\"/>";
  }
  const std::string job = oracle::scratch_folder("proof-long") + "/long.xml";
  oracle::write_file(
      job, "<job version=\"1\" reference=\"L-1\" unit=\"in\"><pictures>" + pictures +
               "</pictures><layers><layer board=\"Oat\"/></layers><arrange><column>" + rows +
               "</row></column></arrange></job>");
  const auto pages = proof_of({job}, false);
  REQUIRE(pages.size() > 1);
  check_pages(pages);
  const std::string text = text_of_all(pages);
  for (int number = 1; number <= count; ++number) {
    const std::string label = "Opening " + std::to_string(number) + "\n";
    const std::size_t first = text.find(label);
    INFO(label);
    REQUIRE(first != std::string::npos);
    CHECK(text.find(label, first + 1) == std::string::npos);
  }
  CHECK(oracle::text_of(pages.back()).find("Signature") != std::string::npos);
}
