#include "engine/file/file.h"

#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/program.h"

using namespace mullion;
namespace fs = std::filesystem;

TEST_CASE("a file that is replaced holds the new bytes and nothing is left beside it") {
  const std::string folder = oracle::scratch_folder("file-replace");
  const std::string path = folder + "/a.txt";
  REQUIRE(replace_file(path, "first"));
  REQUIRE(replace_file(path, std::string("second\0bytes", 12)));
  CHECK(read_file(path, 100).value() == std::string("second\0bytes", 12));
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) == 1);
}

TEST_CASE("a path that cannot be written leaves what stands there whole and nothing beside it") {
  CHECK_FALSE(replace_file("/dev/full/a.txt", "x"));
  const std::string folder = oracle::scratch_folder("file-full");
  fs::create_directory(folder + "/taken");
  oracle::write_file(folder + "/taken/inside", "kept");
  CHECK_FALSE(replace_file(folder + "/taken", "x"));
  CHECK(oracle::read_file(folder + "/taken/inside") == "kept");
  CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator()) == 1);
}

TEST_CASE("folders, devices, missing files and files over the limit are refused with the path") {
  const std::string folder = oracle::scratch_folder("file-read");
  oracle::write_file(folder + "/five", "12345");
  CHECK(read_file(folder + "/five", 5).value() == "12345");
  CHECK(read_file(folder + "/five", 4).error().find("limit of 4 bytes") != std::string::npos);
  for (const std::string& path : {folder, folder + "/none", std::string("/dev/zero")}) {
    const auto result = read_file(path, 1000);
    REQUIRE_FALSE(result);
    CHECK(result.error().find(path) != std::string::npos);
  }
}

TEST_CASE("a replaced file keeps its permissions") {
  const std::string path = oracle::scratch_folder("file-mode") + "/a.txt";
  oracle::write_file(path, "old");
  fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
  REQUIRE(replace_file(path, "new"));
  CHECK((fs::status(path).permissions() & fs::perms::all) ==
        (fs::perms::owner_read | fs::perms::owner_write));
}
