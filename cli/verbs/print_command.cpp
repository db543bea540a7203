#include "cli/verbs/print_command.h"

#include <algorithm>
#include <cstdio>
#include <map>

namespace mullion::cli {
namespace {

std::string in_shell_quotes(const std::string& file) {
  const std::string safe =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._/+,=:@%-";
  const std::string path = file.starts_with('-') ? "./" + file : file;
  if (path.find_first_not_of(safe) == std::string::npos) return path;
  std::string quoted = "'";
  for (const char c : path) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

// "1-3,7": places counted from 1.
std::string ranges_of(const std::vector<std::size_t>& places) {
  std::string text;
  for (std::size_t i = 0; i < places.size(); ++i) {
    std::size_t last = i;
    while (last + 1 < places.size() && places[last + 1] == places[last] + 1) ++last;
    text += (text.empty() ? "" : ",") + std::to_string(places[i]);
    if (last > i) text += "-" + std::to_string(places[last]);
    i = last;
  }
  return text;
}

}  // namespace

std::vector<std::string> print_commands(const std::string& file,
                                        const std::vector<paper::Page>& pages) {
  std::vector<std::string> media;
  std::map<std::string, std::vector<std::size_t>> places;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::string name = paper::media_name(pages[i].size);
    if (places[name].empty()) media.push_back(name);
    places[name].push_back(i + 1);
  }
  std::vector<std::string> commands;
  for (const std::string& name : media) {
    std::string command = "lp -o media=" + name + " -o sides=one-sided -o print-scaling=none ";
    if (media.size() > 1) command += "-P " + ranges_of(places[name]) + " ";
    commands.push_back(command + in_shell_quotes(file));
  }
  return commands;
}

}  // namespace mullion::cli
