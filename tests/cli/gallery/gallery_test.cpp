// The jobs of the gallery, and the pictures made from them.

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <pugixml.hpp>
#include <set>

#include "tests/oracle/program.h"

namespace {

namespace fs = std::filesystem;

std::vector<std::string> jobs() {
  std::vector<std::string> paths;
  for (const auto& entry : fs::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() == ".xml") paths.push_back(entry.path().string());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

std::string schema() {
  return std::string(MULLION_SOURCE) + "/engine/job/job.xsd";
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// Names of elements and attributes, and the words that attributes have.
struct Vocabulary {
  std::set<std::string> shared;  // attributes of several elements, without the element
  std::set<std::string> elements, attributes, values;
};

void add_words(const pugi::xml_node& node, Vocabulary& words) {
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() != pugi::node_element) continue;
    words.elements.insert(child.name());
    for (const pugi::xml_attribute& attribute : child.attributes()) {
      words.attributes.insert(std::string(child.name()) + " " + attribute.name());
      words.shared.insert(attribute.name());
      words.values.insert(attribute.value());
    }
    add_words(child, words);
  }
}

Vocabulary words_of_gallery() {
  Vocabulary words;
  for (const std::string& path : jobs()) {
    pugi::xml_document document;
    REQUIRE(document.load_file(path.c_str()));
    add_words(document, words);
  }
  return words;
}

// Every element of the schema with the attributes of its type.
void add_schema(const pugi::xml_document& document, Vocabulary& words) {
  const pugi::xml_node root = document.child("xs:schema");
  for (const auto& found : root.select_nodes("//xs:element[@name]")) {
    const pugi::xml_node element = found.node();
    words.elements.insert(element.attribute("name").value());
    const pugi::xml_node type =
        root.find_child_by_attribute("xs:complexType", "name", element.attribute("type").value());
    for (const pugi::xml_node& attribute : type.children("xs:attribute")) {
      words.attributes.insert(std::string(element.attribute("name").value()) + " " +
                              attribute.attribute("name").value());
    }
  }
  for (const auto& found : root.select_nodes("//xs:attributeGroup/xs:attribute")) {
    words.shared.insert(found.node().attribute("name").value());
  }
  for (const auto& found : root.select_nodes("//xs:enumeration")) {
    words.values.insert(found.node().attribute("value").value());
  }
}

std::string missing(const std::set<std::string>& wanted, const std::set<std::string>& found) {
  std::string out;
  for (const std::string& word : wanted) {
    if (found.count(word) == 0) out += word + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("the gallery holds at least 24 jobs, each valid for xmllint by the schema") {
  REQUIRE(jobs().size() >= 24);
  std::vector<std::string> words{"xmllint", "--noout", "--schema", schema()};
  for (const std::string& path : jobs()) words.push_back(path);
  const oracle::Run run = oracle::run(words);
  INFO(run.err);
  CHECK(run.status == 0);
}

TEST_CASE("the gallery's jobs use every word of the job file") {
  pugi::xml_document document;
  REQUIRE(document.load_file(schema().c_str()));
  Vocabulary all;
  add_schema(document, all);
  REQUIRE(all.elements.size() > 20);
  REQUIRE(all.attributes.size() > 80);
  const Vocabulary used = words_of_gallery();
  CHECK(missing(all.elements, used.elements) == "");
  CHECK(missing(all.attributes, used.attributes) == "");
  REQUIRE(all.shared.size() >= 9);
  CHECK(missing(all.shared, used.shared) == "");
  CHECK(missing(all.values, used.values) == "");
}

TEST_CASE(
    "every job of the gallery begins with what the customer asked, and checks without error") {
  for (const std::string& path : jobs()) {
    INFO(path);
    CHECK(has(oracle::read_file(path).substr(0, 60), "<!--"));
    const oracle::Run run = oracle::mullion({"check", path});
    CHECK(run.status == 0);
    CHECK_FALSE(has(run.err, "error:"));
  }
}

TEST_CASE("the gallery's page tells of every job and shows pictures that are there") {
  const std::string page = oracle::read_file(oracle::gallery("README.md"));
  for (const std::string& path : jobs()) {
    const std::string name = fs::path(path).stem().string();
    INFO(name);
    CHECK(has(page, "(" + name + ".xml)"));
    for (const char* what : {"proof", "template", "cuts"}) {
      const std::string picture = "made/" + name + "-" + what + ".png";
      CHECK(has(page, picture));
      CHECK(fs::exists(oracle::gallery(picture)));
    }
  }
}

TEST_CASE(
    "the gallery's pictures are up to date (else: cmake --build --preset release --target "
    "gallery)") {
  const std::string folder = oracle::scratch_folder("gallery-made");
  const oracle::Run made = oracle::run({oracle::gallery("make"), MULLION_PROGRAM, folder});
  INFO(made.err);
  REQUIRE(made.status == 0);
  const std::string sums = oracle::gallery("made/made.sha256");
  const std::string command =
      "cd '" + folder + "' && sha256sum --check --strict --quiet '" + sums + "'";
  const oracle::Run checked = oracle::run({"sh", "-c", command});
  INFO(checked.out);
  CHECK(checked.status == 0);
  const std::string recorded = oracle::read_file(sums);
  CHECK(std::count(recorded.begin(), recorded.end(), '\n') == 3 * std::ptrdiff_t(jobs().size()));
}

TEST_CASE("the gallery stays small") {
  std::uintmax_t total = 0;
  for (const auto& entry : fs::recursive_directory_iterator(oracle::gallery(""))) {
    if (!entry.is_regular_file()) continue;
    INFO(entry.path().string());
    CHECK(entry.file_size() < 100'000);
    total += entry.file_size();
  }
  CHECK(total < 4'000'000);
}
