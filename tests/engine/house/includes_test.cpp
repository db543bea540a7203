#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <vector>

// The sources are read: who includes whom.

namespace {

namespace fs = std::filesystem;

struct Include {
  std::string file, header;  // "cli/main.cpp", "cli/verb.h"; headers of others as they are written
};

std::vector<Include> includes_of(const fs::path& path, const std::string& name) {
  std::vector<Include> out;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("#include ", 0) != 0) continue;
    const std::size_t from = line.find_first_of("\"<") + 1;
    out.push_back({name, line.substr(from, line.find_first_of("\">", from) - from)});
  }
  return out;
}

std::vector<Include> all_includes() {
  std::vector<Include> out;
  const fs::path root = MULLION_SOURCE;
  for (const char* part : {"engine", "render", "cli"}) {
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / part)) {
      if (entry.path().extension() != ".h" && entry.path().extension() != ".cpp") continue;
      for (Include& include : includes_of(entry.path(), entry.path().lexically_relative(root))) {
        out.push_back(std::move(include));
      }
    }
  }
  return out;
}

bool is_ours(const std::string& header) {
  return header.starts_with("engine/") || header.starts_with("render/") ||
         header.starts_with("cli/");
}

// The headers that a part's CMakeLists.txt lists to be installed.
std::set<std::string> public_headers(const std::string& part) {
  std::set<std::string> out;
  std::ifstream in(std::string(MULLION_SOURCE) + "/" + part + "/CMakeLists.txt");
  std::string word;
  while (in >> word && word != "FILES") {
  }
  for (bool goes_on = true; goes_on && in >> word;) {
    goes_on = !word.ends_with(')');
    if (!goes_on) word.pop_back();
    out.insert(part + "/" + word);
  }
  return out;
}

// Where a file of the house stands below another.
int floor_of(const std::string& file) {
  return file.starts_with("engine/") ? 0 : file.starts_with("render/") ? 1 : 2;
}

// "engine/cuts" of "engine/cuts/plan/board.h", "cli" of "cli/main.cpp".
std::string room_of(const std::string& file) {
  const std::size_t first = file.find('/'), second = file.find('/', first + 1);
  return file.substr(0, second == std::string::npos ? first : second);
}

using Doors = std::map<std::string, std::set<std::string>>;

bool leads(const Doors& doors, const std::string& from, const std::string& to) {
  std::set<std::string> seen;
  std::vector<std::string> open{from};
  while (!open.empty()) {
    const std::string room = open.back();
    open.pop_back();
    if (room == to) return true;
    if (!seen.insert(room).second || !doors.contains(room)) continue;
    open.insert(open.end(), doors.at(room).begin(), doors.at(room).end());
  }
  return false;
}

// The includes that are part of a circle of rooms, a line each.
std::string circles(const std::vector<Include>& includes) {
  Doors doors;
  for (const Include& include : includes) {
    if (!is_ours(include.header)) continue;
    const std::string from = room_of(include.file), to = room_of(include.header);
    if (from != to) doors[from].insert(to);
  }
  std::string out;
  for (const auto& [file, header] : includes) {
    if (!is_ours(header) || room_of(file) == room_of(header)) continue;
    if (leads(doors, room_of(header), room_of(file))) out += file + " includes " + header + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE(
    "one file alone sees the library that reads the command line, and one of the page JSON's") {
  std::vector<std::string> of_command_line, of_json;
  for (const Include& include : all_includes()) {
    if (include.header.starts_with("CLI/")) of_command_line.push_back(include.file);
    if (include.header.starts_with("nlohmann/") && include.file.starts_with("cli/")) {
      of_json.push_back(include.file);
    }
  }
  CHECK(of_command_line == std::vector<std::string>{"cli/command_line.cpp"});
  CHECK(of_json == std::vector<std::string>{"cli/page/state.h"});  // what the page is told
}

TEST_CASE(
    "one folder alone draws by Cairo and Pango, and lets no header that others include show it") {
  const std::set<std::string> own{"render/paper/cairo.h"};
  std::set<std::string> drawing, others;
  for (const auto& [file, header] : all_includes()) {
    if (header.starts_with("cairo") || header.starts_with("pango")) drawing.insert(file);
    if (own.contains(header) && room_of(file) != "render/paper") others.insert(file);
  }
  CHECK(drawing.size() >= 2);
  for (const std::string& file : drawing) {
    INFO(file);
    CHECK(room_of(file) == "render/paper");
    CHECK((file.ends_with(".cpp") || own.contains(file)));
  }
  CHECK(others.empty());
}

TEST_CASE("the program includes the drawing and the drawing the engine, never the other way") {
  const std::vector<Include> includes = all_includes();
  REQUIRE(includes.size() > 1000);
  std::string wrong;
  for (const auto& [file, header] : includes) {
    if (!is_ours(header) || floor_of(header) <= floor_of(file)) continue;
    wrong += file + " includes " + header + "\n";
  }
  CHECK(wrong == "");
}

TEST_CASE("a header that is installed includes of ours only what is installed") {
  std::set<std::string> installed = public_headers("engine");
  installed.merge(public_headers("render"));
  REQUIRE(installed.contains("engine/job/job.h"));
  REQUIRE(installed.contains("render/template/template.h"));
  std::string wrong;
  for (const auto& [file, header] : all_includes()) {
    if (!installed.contains(file) || !is_ours(header) || installed.contains(header)) continue;
    wrong += file + " includes " + header + "\n";
  }
  CHECK(wrong == "");
}

TEST_CASE("no folders include one another in a circle") {
  CHECK(circles(all_includes()) == "");
}

TEST_CASE("a circle of three folders is found") {
  CHECK(circles({{"engine/mat/mat.h", "engine/layout/layout.h"},
                 {"engine/layout/layout.h", "engine/job/job.h"},
                 {"engine/job/read/pictures.cpp", "engine/mat/mat.h"},
                 {"engine/mat/mat.h", "engine/length/length.h"},
                 {"cli/main.cpp", "engine/mat/mat.h"}}) ==
        "engine/mat/mat.h includes engine/layout/layout.h\n"
        "engine/layout/layout.h includes engine/job/job.h\n"
        "engine/job/read/pictures.cpp includes engine/mat/mat.h\n");
}
