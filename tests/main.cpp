#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>
#include <cstdlib>

// English words whatever the developer's locale is.
int main(int argc, char** argv) {
  setenv("LC_ALL", "C.UTF-8", 1);
  return Catch::Session().run(argc, argv);
}
