#include "tests/engine/layout/advice.h"

#include <algorithm>
#include <regex>
#include <stdexcept>

#include "engine/length/format.h"
#include "tests/engine/layout/changed_job.h"

namespace test {

using namespace mullion;

namespace {

bool has_prefix(const std::string& text, const std::string& prefix) {
  return text.compare(0, prefix.size(), prefix) == 0;
}

std::vector<std::string> split(const std::string& text, const std::regex& separator) {
  return {std::sregex_token_iterator(text.begin(), text.end(), separator, -1), {}};
}

Length length_in(const std::string& text, Unit unit = Unit::inch) {
  const auto length = parse_length(text, unit);
  if (!length) throw std::runtime_error("no length: " + text);
  return *length;
}

bool is_at(const ToldConflict& conflict, Place place, const std::string& text) {
  return std::any_of(conflict.parts.begin(), conflict.parts.end(), [&](const auto& part) {
    return part.place == place && has_prefix(part.text, text);
  });
}

bool set_size(Job& job, const std::string& what, Length size) {
  Borders& borders = job.borders;
  const auto has = [&](const char* word) { return what.find(word) != std::string::npos; };
  if (what == "an outer width") {
    job.outer_width = size;
  } else if (what == "an outer height") {
    job.outer_height = size;
  } else if (what == "a rabbet width") {
    job.frame->rabbet_width = size;
  } else if (what == "a rabbet height") {
    job.frame->rabbet_height = size;
  } else if (has("border")) {
    if (has("left")) borders.left = size;
    if (has("right")) borders.right = size;
    if (has("top")) borders.top = size;
    if (has("bottom")) borders.bottom_size = size;
  } else {
    return false;
  }
  return true;
}

// The gaps that take part, all of them or those of one size.
void set_gaps(Job& job, const ToldConflict& conflict, Length size, std::optional<Length> stated) {
  for (Group* group : groups_of(job.arrangement)) {
    const auto concerns = [&](const std::optional<Length>& gap, Place place) {
      return gap && (!stated || *gap == *stated) && is_at(conflict, place, "gap of ");
    };
    if (concerns(group->gap, group->place)) group->gap = size;
    for (Gap& gap : group->gaps) {
      if (concerns(gap.size, gap.place)) gap.size = size;
    }
  }
}

std::vector<Job> with_rule(const Job& job, const ToldConflict& conflict, const std::string& text,
                           Length size) {
  std::vector<Job> out;
  for (std::size_t i = 0; i < job.rules.size(); ++i) {
    if (!is_at(conflict, job.rules[i].place, text)) continue;
    out.push_back(job);
    out.back().rules[i].value = size;
  }
  return out;
}

std::vector<Job> without(const Job& job, const ToldConflict& conflict, const std::string& text) {
  std::vector<Job> out;
  for (std::size_t i = 0; i < job.rules.size(); ++i) {
    if (!is_at(conflict, job.rules[i].place, text)) continue;
    out.push_back(job);
    out.back().rules.erase(out.back().rules.begin() + static_cast<std::ptrdiff_t>(i));
  }
  if (has_prefix(text, "the bottom border")) {
    out.push_back(job);
    out.back().borders.bottom = Borders::Bottom::equal;
  }
  return out;
}

}  // namespace

std::vector<ToldConflict> told_conflicts(const Problems& problems) {
  const std::string intro = "this takes part: ";
  std::vector<ToldConflict> out;
  for (const Problem& problem : problems) {
    if (problem.severity == Severity::error) {
      out.push_back({problem.message, {}});
    } else {
      out.back().parts.push_back({problem.message.substr(intro.size()), problem.place});
    }
  }
  return out;
}

std::vector<std::string> ways_in(const ToldConflict& conflict) {
  const std::string& message = conflict.message;
  const std::size_t end = message.rfind(" would fit");
  if (end == std::string::npos) return {};
  const std::size_t start = message.rfind("; ", end) + 2;
  return split(message.substr(start, end - start), std::regex(", (?=[^ ]* ?[^,]*)| or "));
}

std::vector<Job> followed(const Job& job, const ToldConflict& conflict, const std::string& way) {
  std::smatch match;
  Job changed = job;
  if (std::regex_match(way, match, std::regex("leaving out \"(.*)\""))) {
    return without(job, conflict, match[1]);
  }
  if (std::regex_match(way, match, std::regex("borders of at least (.*)"))) {
    changed.borders.least = std::min(*job.borders.least, length_in(match[1]));
    return {changed};
  }
  if (std::regex_match(way, match, std::regex("bars of at least (.*)"))) {
    changed.least_bar = std::min(*job.least_bar, length_in(match[1]));
    return {changed};
  }
  if (std::regex_match(way, match, std::regex("(?:a gap|gaps) of (.*?)(?: in place of (.*))?"))) {
    const auto stated = match[2].matched ? std::optional(length_in(match[2])) : std::nullopt;
    set_gaps(changed, conflict, length_in(match[1]), stated);
    return {changed};
  }
  if (std::regex_match(way, match, std::regex("(.*) of (.*)"))) {
    if (!set_size(changed, match[1], length_in(match[2]))) return {};
    return {changed};
  }
  if (std::regex_match(way, match, std::regex("([^ ]+ at (?:least |most )?)(.*)"))) {
    return with_rule(job, conflict, match[1], length_in(match[2]));
  }
  return {};
}

SumCheck check_sum(const std::string& message, Unit unit) {
  static const std::regex form(
      "(.*) (?:needs?|comes? to) (.*?); the outer (?:width|height)(?: \\(.*\\))? is (.*?): "
      "(.*?) (short|too much)(?:;.*)?");
  static const std::map<std::string, int> words{{"a", 1},     {"an", 1},    {"two", 2},
                                                {"three", 3}, {"four", 4},  {"five", 5},
                                                {"six", 6},   {"seven", 7}, {"eight", 8}};
  std::smatch match;
  if (!std::regex_match(message, match, form) || message.find("about") != std::string::npos) {
    return {};
  }
  Length sum;
  for (const std::string& item : split(match[1], std::regex(", | and "))) {
    std::smatch part;
    if (std::regex_match(item, part, std::regex("borders (.*)"))) {
      for (const auto& one : split(part[1], std::regex(" \\+ "))) sum += length_in(one, unit);
    } else if (std::regex_match(item, part, std::regex("the bottom border (.*) wider.*"))) {
      sum += length_in(part[1], unit);
    } else if (std::regex_match(item, part, std::regex("[^ ]+\\.[^ ]+ at (?:least |most )?(.*)")) ||
               std::regex_match(item, part, std::regex("g[0-9]+ at (?:least |most )?(.*)"))) {
      sum += length_in(part[1], unit);
    } else if (std::regex_match(item, part, std::regex("(\\w+) .* (?:of|least) (.*)"))) {
      const auto count = words.find(part[1]);
      if (count == words.end()) return {true, "not understood: " + item};
      sum += length_in(part[2], unit) * count->second;
    } else {
      return {true, "not understood: " + item};
    }
  }
  const Length need = length_in(match[2]), outer = length_in(match[3]), off = length_in(match[4]);
  if (sum != need) return {true, "the parts are not what they need"};
  if (need - outer != (match[5] == "short" ? off : -off)) return {true, "the difference is wrong"};
  return {true, ""};
}

}  // namespace test
