#include "cli/page/papers.h"

#include <algorithm>

#include "cli/page/child.h"
#include "cli/page/passing_folder.h"
#include "cli/verb.h"
#include "engine/file/file.h"

namespace mullion::cli::page {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t most_bytes = std::size_t{512} * 1024 * 1024;

void add_option(Words& words, const char* option, const std::string& value) {
  if (!value.empty()) words.insert(words.end(), {option, value});
}

// Paths that begin with a dash are no options.
std::string as_path(const std::string& path) {
  return path.starts_with('-') ? "./" + path : path;
}

int number_in(std::string_view text, std::size_t& at) {
  int number = 0;
  std::size_t end = at;
  while (end < text.size() && end - at < 9 && text[end] >= '0' && text[end] <= '9') {
    number = 10 * number + (text[end++] - '0');
  }
  if (end == at) return 0;
  at = end;
  return number;
}

// "file:12:3: error: found ... [code]"
std::optional<Problem> problem_in(std::string_view line) {
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    const std::string word = std::string(word_for(severity)) + ": ";
    const std::size_t at = line.find(word);
    if (at == line.npos || (at > 0 && line[at - 1] != ' ')) continue;
    Problem out{severity, "", std::string(line.substr(at + word.size())), {}, ""};
    if (out.message.ends_with(']')) {
      const std::size_t open = out.message.rfind(" [");
      if (open != std::string::npos) {
        out.code = out.message.substr(open + 2, out.message.size() - open - 3);
        out.message.erase(open);
      }
    }
    std::string_view before = line.substr(0, at);
    if (const std::size_t colon = before.find(':'); colon != before.npos) {
      out.file = before.substr(0, colon);
      std::size_t next = colon + 1;
      out.place.line = number_in(before, next);
      if (out.place.line > 0) out.place.column = number_in(before, ++next);
    }
    return out;
  }
  return std::nullopt;
}

}  // namespace

const std::vector<Paper>& papers() {
  static const std::vector<Paper> all = {
      {"proof.pdf", "application/pdf", true},
      {"proof.html", "text/html; charset=utf-8", true},
      {"template.pdf", "application/pdf", true},
      {"cuts.pdf", "application/pdf", true},
      {"cuts.html", "text/html; charset=utf-8", true},
      {"sheets.pdf", "application/pdf", true},
      {"estimate.txt", "text/plain; charset=utf-8", true},
      {"mail.eml", "message/rfc822", false},
  };
  return all;
}

const Paper* paper_called(std::string_view name) {
  const auto found = std::find_if(papers().begin(), papers().end(),
                                  [&](const Paper& one) { return one.name == name; });
  return found == papers().end() ? nullptr : &*found;
}

Words words_for(const Paper& paper, const std::string& job, const std::string& file,
                const PaperWishes& wishes) {
  const std::string verb =
      paper.name == "mail.eml" ? "proof" : paper.name.substr(0, paper.name.find('.'));
  Words words{verb, as_path(job)};
  if (verb != "estimate") {
    add_option(words, paper.name == "mail.eml" ? "--mail" : "--output", as_path(file));
  }
  if (verb == "proof") add_option(words, "--shop", wishes.shop);
  if (verb == "proof" || verb == "estimate") add_option(words, "--prices", wishes.prices);
  if (verb == "template") {
    add_option(words, "--paper", wishes.paper);
    add_option(words, "--printer", wishes.printer);
  }
  if (verb == "cuts" || verb == "sheets" || verb == "template") {
    add_option(words, "--cutter", wishes.cutter);
  }
  if (verb == "sheets") add_option(words, "--stock", wishes.stock);
  add_option(words, "--language", wishes.language);
  return words;
}

Problems problems_in(std::string_view said) {
  Problems out;
  while (!said.empty()) {
    const std::size_t end = std::min(said.find('\n'), said.size());
    if (auto problem = problem_in(said.substr(0, end))) out.push_back(std::move(*problem));
    said.remove_prefix(std::min(end + 1, said.size()));
  }
  return out;
}

MadePaper make_paper(const Paper& paper, const std::string& job, const PaperWishes& wishes,
                     Halt& halt) {
  const PassingFolder passing;
  const std::string file = passing.path() + "/" + paper.name;
  Ended ended = run_again(words_for(paper, job, file, wishes), halt);
  MadePaper out{std::nullopt, problems_in(ended.errors)};
  if (ended.status == success) {
    if (paper.name == "estimate.txt") {
      out.bytes = std::move(ended.output);
    } else if (auto bytes = read_file(file, most_bytes)) {
      out.bytes = std::move(*bytes);
    }
  }
  const bool tells_why =
      std::any_of(out.problems.begin(), out.problems.end(),
                  [](const Problem& p) { return p.severity == Severity::error; });
  if (!out.bytes && !tells_why) {
    out.problems.push_back({Severity::error,
                            "page-paper",
                            paper.name + " could not be made: " + ended.errors,
                            {},
                            ""});
  }
  return out;
}

MadeAnew make_anew(const std::string& job, const std::string& folder, const PaperWishes& wishes,
                   Halt& halt) {
  Words check{"check", as_path(job)};
  add_option(check, "--cutter", wishes.cutter);
  const Ended checked = run_again(check, halt);
  MadeAnew out{checked.errors};
  for (const char* name : {"proof.html", "proof.pdf", "template.pdf", "cuts.pdf"}) {
    if (checked.status == success) {
      const Ended ended =
          run_again(words_for(*paper_called(name), job, folder + "/" + name, wishes), halt);
      if (ended.status == success) {
        ++out.made;
        continue;
      }
      out.problems += ended.errors;
    }
    ++out.failed;
  }
  return out;
}

}  // namespace mullion::cli::page
