#include <cstdio>
#include <filesystem>
#include <memory>

#include "cli/language.h"
#include "cli/load.h"
#include "cli/questions.h"
#include "cli/terminal.h"
#include "cli/verb.h"
#include "engine/job/usual.h"
#include "engine/starting/said_sizes.h"
#include "engine/starting/starting.h"
#include "engine/xml/words.h"

namespace mullion::cli {
namespace {

using starting::Start;
using starting::StartingPicture;

constexpr std::size_t most_asked_pictures = 50;
constexpr std::size_t most_asked_layers = 8;

struct Options {
  std::string job, unit, border, bottom_extra, gap, frame, reference, customer, title;
  std::vector<std::string> images, sizes, names, boards;
  std::size_t layers = 0;
  bool force = false;
};

Unit unit_of(const std::string& word) {
  return word == "mm" ? Unit::millimetre : word == "cm" ? Unit::centimetre : Unit::inch;
}

// What a person is asked, where neither sizes nor images were given.
class Interview {
 public:
  explicit Interview(Options& options) : options_(options) {}

  bool ask_all() {
    std::fputs("Return takes what stands in brackets.\n", stderr);
    return ask_unit() && ask_pictures() && ask_mat() && text("Customer", options_.customer) &&
           text("Title of the job", options_.title);
  }

 private:
  Unit unit() const { return unit_of(options_.unit); }

  bool ask_unit() {
    return ask("Unit: in, mm or cm", options_.unit, [&](const std::string& answer) -> std::string {
      if (answer != "in" && answer != "mm" && answer != "cm") {
        return "found \"" + answer + "\"; expected in, mm or cm";
      }
      options_.unit = answer;
      return {};
    });
  }

  bool ask_pictures() {
    std::size_t count = 0;
    if (!number("How many pictures", most_asked_pictures, count)) return false;
    for (std::size_t i = 0; i < count; ++i) {
      const std::string which = count == 1 ? "the picture" : "picture " + std::to_string(i + 1);
      std::string name;
      if (!ask("Name of " + which, "picture-" + std::to_string(i + 1),
               [&](const std::string& answer) {
                 name = answer;
                 return std::string();
               }) ||
          !size("Size of " + which + ", width x height", options_.sizes.emplace_back())) {
        return false;
      }
      if (options_.names.size() <= i) options_.names.push_back(name);
    }
    return count == 1 || length("Gap between them", usual_for(unit()).gap, options_.gap);
  }

  bool ask_mat() {
    if (options_.boards.empty() && options_.layers == 0 &&
        !number("How many mats, one above the other", most_asked_layers, options_.layers)) {
      return false;
    }
    if (!size("Rabbet of a frame that is at hand, width x height; return: none", options_.frame,
              true)) {
      return false;
    }
    const bool framed = !options_.frame.empty();
    return length(framed ? "The least border" : "Border",
                  framed ? Length() : usual_for(unit()).large_border, options_.border) &&
           length("More at the bottom", Length(), options_.bottom_extra);
  }

  // Questions that an option has answered are not asked.
  bool text(const char* question, std::string& to) {
    return !to.empty() || ask(question, "", [&](const std::string& answer) {
      to = answer;
      return std::string();
    });
  }

  static bool number(const char* question, std::size_t most, std::size_t& to) {
    return ask(question, "1", [&](const std::string& answer) -> std::string {
      const bool digits = !answer.empty() && answer.size() <= 3 &&
                          answer.find_first_not_of("0123456789") == std::string::npos;
      to = digits ? std::stoul(answer) : 0;
      if (to >= 1 && to <= most) return {};
      return "found \"" + answer + "\"; expected a number from 1 to " + std::to_string(most);
    });
  }

  bool length(const char* question, Length usual, std::string& to) {
    if (!to.empty()) return true;
    return ask(question, format_exact(usual, unit()), [&](const std::string& answer) {
      const auto length = parse_length(answer, unit());
      if (!length) return length.error();
      if (*length < Length()) return "found \"" + answer + "\"; expected no less than nothing";
      to = answer;
      return std::string();
    });
  }

  bool size(const std::string& question, std::string& to, bool may_be_none = false) {
    if (!to.empty()) return true;
    return ask(question, "", [&](const std::string& answer) {
      if (may_be_none && answer.empty()) return std::string();
      const auto size = starting::parse_size(answer, unit());
      if (!size) return size.error();
      to = answer;
      return std::string();
    });
  }

  Options& options_;
};

// Turns the texts of the options into a start, and collects what is wrong with them.
class Reader {
 public:
  explicit Reader(const Options& options) : options_(options) {
    start_.unit = unit_of(options.unit);
    start_.reference = options.reference;
    start_.customer = options.customer;
    start_.title = options.title;
  }

  Result<Start> read() {
    read_pictures();
    read_measures();
    start_.boards = options_.boards;
    start_.boards.resize(std::max({options_.layers, options_.boards.size(), std::size_t{1}}));
    if (!problems_.empty()) return tl::unexpected(std::move(problems_));
    return std::move(start_);
  }

 private:
  void problem(const char* option, const std::string& why) {
    problems_.push_back(option_problem(option, why));
  }

  void read_pictures() {
    for (const std::string& path : options_.images) {
      auto picture = starting::picture_of(path, beside_job(path), start_.unit);
      if (!picture) {
        problems_.push_back({Severity::error, "file-read", picture.error(), {}, ""});
        continue;
      }
      if (picture->image.empty()) {
        picture->remark +=
            "; the image is not below the folder of this file, so that no proof can "
            "show it";
      }
      start_.pictures.push_back(std::move(*picture));
    }
    read_sizes(start_.pictures.size());
    for (std::size_t i = 0; i < options_.names.size() && i < start_.pictures.size(); ++i) {
      start_.pictures[i].name = options_.names[i];
    }
    if (options_.names.size() > start_.pictures.size() && problems_.empty()) {
      problem("--name", "found more names than pictures");
    }
  }

  // A measured size stands instead of the one that an image proposes.
  void read_sizes(std::size_t images) {
    std::size_t next = 0;
    for (const std::string& text : options_.sizes) {
      const auto said = starting::parse_said_sizes(text, start_.unit);
      if (!said) {
        problem("--size", said.error().front().message);
        continue;
      }
      for (const starting::SaidSize& one : *said) {
        for (int i = 0; i < one.count; ++i, ++next) {
          if (next >= images) start_.pictures.emplace_back();
          StartingPicture& picture = start_.pictures[next];
          picture.width = one.size.width;
          picture.height = one.size.height;
          if (!one.name.empty()) picture.name = one.name;
          picture.remark.clear();
        }
      }
    }
  }

  void read_measures() {
    start_.gap = usual_for(start_.unit).gap;
    if (const auto gap = length("--gap", options_.gap)) start_.gap = *gap;
    start_.border = length("--border", options_.border);
    start_.bottom_extra = length("--bottom-extra", options_.bottom_extra);
    if (start_.bottom_extra == Length()) start_.bottom_extra.reset();
    if (options_.frame.empty()) return;
    const auto frame = starting::parse_size(options_.frame, start_.unit);
    if (!frame) return problem("--frame", frame.error());
    start_.rabbet_width = frame->width;
    start_.rabbet_height = frame->height;
    if (start_.border == Length()) start_.border.reset();
  }

  std::optional<Length> length(const char* option, const std::string& text) {
    if (text.empty()) return std::nullopt;
    const auto length = parse_length(text, start_.unit);
    if (length && *length >= Length()) return *length;
    problem(option,
            length ? "found \"" + text + "\"; expected no less than nothing" : length.error());
    return std::nullopt;
  }

  // How the job file may speak of an image; empty where it may not.
  std::string beside_job(const std::string& path) const {
    namespace fs = std::filesystem;
    std::error_code failed;
    const fs::path folder = options_.job == "-" ? fs::path() : fs::path(options_.job).parent_path();
    const fs::path image = fs::proximate(path, folder.empty() ? "." : folder, failed);
    const std::string text = image.generic_string();
    return failed || !path_fault(text).empty() ? std::string() : text;
  }

  const Options& options_;
  Start start_;
  Problems problems_;
};

// Where the shop stands, by its locale.
std::string usual_unit() {
  return environment_locale("LC_MEASUREMENT").measure() == Measure::metric ? "mm" : "in";
}

int refuse_path(const Options& options) {
  if (options.job != "-" && ending_of(options.job) != "xml") {
    return bad_option("JOB", "found \"" + options.job + "\"; expected a name that ends in .xml");
  }
  std::error_code failed;
  const auto there = std::filesystem::symlink_status(options.job, failed);
  if (options.job == "-" || options.force || !std::filesystem::exists(there)) return success;
  return refuse(bad_file, options.job + ": there is such a file already; --force replaces it");
}

std::string told(const Start& start, const starting::Started& started) {
  const Scale& scale = started.job.scale;
  std::string out;
  for (std::size_t i = 0; i < start.pictures.size(); ++i) {
    const Picture& picture = started.job.pictures[i];
    out += picture.id + ": " + describe(picture.width, scale) + " x " +
           describe(picture.height, scale);
    if (!start.pictures[i].remark.empty()) out += " (" + start.pictures[i].remark + ")";
    out += "\n";
  }
  return out + started.job.file + ": mat " + describe(started.layout.width, scale) + " x " +
         describe(started.layout.height, scale) + "\n";
}

int begin(Options options) {
  if (options.unit.empty()) options.unit = usual_unit();
  if (const int status = refuse_path(options); status != success) return status;
  if (options.images.empty() && options.sizes.empty()) {
    if (!can_ask()) {
      return refuse(bad_usage,
                    "there is no terminal to ask on; expected --size or the files of the pictures "
                    "(see mullion new --help)");
    }
    if (!Interview(options).ask_all()) return refuse(bad_job, "the answers ended; nothing written");
  }
  const Result<Start> start = Reader(options).read();
  if (!start) return report(start.error());
  auto started = starting::start_job(*start, options.job);
  if (!started) {  // places in a file that is not written help nobody
    for (Problem& problem : started.error()) problem.place = {}, problem.file.clear();
    return report(started.error());
  }
  const int written = write_output(options.job, started->xml);
  if (written != success) return written;
  std::fputs(printable(told(*start, *started)).c_str(), options.job == "-" ? stderr : stdout);
  return success;
}

}  // namespace

void add_new(CommandLine& program) {
  const Verb verb =
      program.verb("new", "Begin a job: asks a few questions, or takes sizes or picture files");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job,
                "The job file to write, or - for standard output")
      .required();
  verb.argument("IMAGE", Takes::file, options->images,
                "JPEG or PNG files of the pictures; sizes are proposed from their pixels and "
                "resolution (300 per inch where a file states none)")
      .times(0, Option::any_number);
  verb.option("--size", Takes::size, options->sizes,
              "Of pictures, in order: \"10 x 8\", \"5x7 *3\" for three, \"21 x 29,7 cm Diploma\" "
              "with a name")
      .one_each_time();
  verb.option("--name", Takes::name, options->names, "Of a picture; once for each, in order")
      .one_each_time();
  verb.option(
          "--unit", Takes::word, options->unit,
          "Of the job: in, mm or cm; where not given, in, or mm where the locale is of a metric "
          "territory")
      .among({"in", "mm", "cm"});
  verb.option("--border", Takes::length, options->border,
              "Around the openings (3 in or 75 mm); with a frame, the least border");
  verb.option("--bottom-extra", Takes::length, options->bottom_extra,
              "The bottom border wider by this");
  verb.option("--gap", Takes::length, options->gap, "Between neighbours (1 in or 25 mm)");
  verb.option("--layers", options->layers, "How many mats, one above the other").between(1, 64);
  verb.option("--board", Takes::name, options->boards,
              "The board of a mat; once for each, top mat first")
      .one_each_time();
  verb.option("--frame", Takes::size, options->frame,
              "The rabbet of a frame at hand: \"14 1/8 x 18 1/8\"");
  verb.option("--reference", Takes::name, options->reference, "The shop's own number for the job");
  verb.option("--customer", Takes::name, options->customer, "The customer's name");
  verb.option("--title", Takes::name, options->title, "What the job is called");
  verb.flag("--force", options->force, "Replace a file that is there already");
  verb.runs([options] { return begin(*options); });
}

}  // namespace mullion::cli
