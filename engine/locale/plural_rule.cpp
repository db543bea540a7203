#include "engine/locale/plural_rule.h"

#include <array>
#include <stdexcept>
#include <string>
#include <vector>

namespace mullion {
namespace {

using Level = std::vector<std::string_view>;

// Two-place operators from the loosest to the tightest; of one level, the longer ones first.
const std::array<Level, 6> levels = {
    {{"||"}, {"&&"}, {"==", "!="}, {"<=", ">=", "<", ">"}, {"+", "-"}, {"*", "/", "%"}}};

std::int64_t apply(std::string_view op, std::int64_t a, std::int64_t b) {
  if (op == "||") return a != 0 || b != 0 ? 1 : 0;
  if (op == "&&") return a != 0 && b != 0 ? 1 : 0;
  if (op == "==") return a == b ? 1 : 0;
  if (op == "!=") return a != b ? 1 : 0;
  if (op == "<=") return a <= b ? 1 : 0;
  if (op == ">=") return a >= b ? 1 : 0;
  if (op == "<") return a < b ? 1 : 0;
  if (op == ">") return a > b ? 1 : 0;
  if (op == "+") return a + b;
  if (op == "-") return a - b;
  if (op == "*") return a * b;
  if (b == 0) throw std::invalid_argument("a plural rule divides by zero");
  return op == "/" ? a / b : a % b;
}

class Reader {
 public:
  Reader(std::string_view text, std::int64_t n) : rest_(text), n_(n) {}

  std::int64_t whole() {
    const std::int64_t value = choice();
    skip_blanks();
    if (!rest_.empty()) fail();
    return value;
  }

 private:
  [[noreturn]] void fail() const {
    throw std::invalid_argument("a plural rule cannot be read at \"" + std::string(rest_) + "\"");
  }
  void skip_blanks() {
    while (!rest_.empty() && (rest_.front() == ' ' || rest_.front() == '\t')) {
      rest_.remove_prefix(1);
    }
  }
  bool take(std::string_view token) {
    skip_blanks();
    if (!rest_.starts_with(token)) return false;
    rest_.remove_prefix(token.size());
    return true;
  }

  std::int64_t choice() {
    const std::int64_t condition = binary(0);
    if (!take("?")) return condition;
    const std::int64_t then = choice();
    if (!take(":")) fail();
    const std::int64_t otherwise = choice();
    return condition != 0 ? then : otherwise;
  }

  std::int64_t binary(std::size_t level) {
    if (level == levels.size()) return unary();
    std::int64_t value = binary(level + 1);
    for (bool found = true; found;) {
      found = false;
      for (const std::string_view op : levels[level]) {
        if (!take(op)) continue;
        value = apply(op, value, binary(level + 1));
        found = true;
        break;
      }
    }
    return value;
  }

  std::int64_t unary() {
    if (take("!")) return unary() == 0 ? 1 : 0;
    if (take("n")) return n_;
    if (take("(")) {
      const std::int64_t value = choice();
      if (!take(")")) fail();
      return value;
    }
    return number();
  }

  std::int64_t number() {
    if (rest_.empty() || rest_.front() < '0' || rest_.front() > '9') fail();
    std::int64_t value = 0;
    while (!rest_.empty() && rest_.front() >= '0' && rest_.front() <= '9') {
      value = value * 10 + (rest_.front() - '0');
      rest_.remove_prefix(1);
    }
    return value;
  }

  std::string_view rest_;
  std::int64_t n_;
};

}  // namespace

std::int64_t plural_form(std::string_view expression, std::int64_t n) {
  return Reader(expression, n).whole();
}

}  // namespace mullion
