#include <event2/event.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <stdexcept>

#include "cli/known_words.h"
#include "cli/report.h"
#include "cli/verb.h"
#include "cli/verbs/paper_names.h"
#include "cli/watch/outputs.h"
#include "cli/watch/server.h"
#include "cli/watch/stamps.h"
#include "engine/file/file.h"
#include "engine/report/report.h"

namespace mullion {
std::string_view watch_page();  // page.html
}

namespace mullion::cli {
namespace {

namespace fs = std::filesystem;
using namespace watch;

struct Options {
  Wishes wishes;
  int port = 0;
};

constexpr timeval look_every{0, 150'000};
constexpr std::size_t most_output_bytes = std::size_t{1024} * 1024 * 1024;

// A new folder, which is taken away at the end.
class PassingFolder {
 public:
  PassingFolder() {
    std::string name = (fs::temp_directory_path() / "mullion-watch-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make a folder " + name);
    path_ = name;
  }
  ~PassingFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  PassingFolder(const PassingFolder&) = delete;
  PassingFolder& operator=(const PassingFolder&) = delete;

  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

const char* type_of(const std::string& name) {
  return name.ends_with(".html") ? "text/html; charset=utf-8" : "application/pdf";
}

class Watch {
 public:
  explicit Watch(Wishes wishes)
      : wishes_(std::move(wishes)), outputs_(outputs_for(wishes_)), files_(watched()) {}

  // Makes the outputs anew where a file has changed and then stayed as it is for one look.
  void look() {
    const Stamps now = stamps_of(files_);
    const bool rests = now == seen_;
    seen_ = now;
    if (rests && now != made_of_) make_anew();
  }

  void make_anew() {
    files_ = watched();
    made_of_ = seen_ = stamps_of(files_);
    made_ = make(outputs_, wishes_);
    ++version_;
    std::fputs(made_.problems.c_str(), stderr);
    std::printf("save %d: %s\n", version_,
                made_.failed.empty()                     ? "all is made anew"
                : made_.failed.size() == outputs_.size() ? "nothing is made anew"
                                                         : "some is not made anew");
    std::fflush(stdout);
  }

  Reply answer(const std::string& path) const {
    if (path == "/") return {200, "text/html; charset=utf-8", std::string(watch_page())};
    if (path == "/state") return {200, "application/json", state()};
    for (const Output& output : outputs_) {
      if (path != "/" + output.name) continue;
      auto bytes = read_file(wishes_.folder + "/" + output.name, most_output_bytes);
      if (bytes) return {200, type_of(output.name), std::move(*bytes)};
    }
    return {404, "text/plain", "There is no such page.\n"};
  }

 private:
  std::vector<std::string> watched() const {
    std::vector<std::string> out = files_of(wishes_.job);
    for (const std::string& file : {wishes_.shop, wishes_.prices, wishes_.cutter}) {
      if (!file.empty()) out.push_back(file);
    }
    return out;
  }

  std::string state() const {
    WatchState out{
        version_, fs::path(wishes_.job).filename().string(), made_.problems, made_.failed, {}};
    for (const Output& output : outputs_) out.outputs.push_back({output.label, output.name});
    return watch_json(out);
  }

  Wishes wishes_;
  std::vector<Output> outputs_;
  std::vector<std::string> files_;
  Stamps seen_, made_of_;
  Made made_;
  int version_ = 0;
};

using Events = std::unique_ptr<event_base, decltype(&event_base_free)>;
using Event = std::unique_ptr<event, decltype(&event_free)>;

void end(evutil_socket_t, short, void* events) {
  event_base_loopbreak(static_cast<event_base*>(events));
}

void look(evutil_socket_t, short, void* watch) {
  static_cast<Watch*>(watch)->look();
}

int serve(const Wishes& wishes, int port) {
  const Events events(event_base_new(), event_base_free);
  if (!events) throw std::runtime_error("cannot wait for events");
  Watch watch(wishes);
  const Server server(events.get(), port,
                      [&watch](const std::string& path) { return watch.answer(path); });
  const Event interrupted(evsignal_new(events.get(), SIGINT, end, events.get()), event_free);
  const Event terminated(evsignal_new(events.get(), SIGTERM, end, events.get()), event_free);
  const Event timer(event_new(events.get(), -1, EV_PERSIST, look, &watch), event_free);
  event_add(interrupted.get(), nullptr);
  event_add(terminated.get(), nullptr);
  event_add(timer.get(), &look_every);
  std::printf("http://127.0.0.1:%d/ shows %s; Ctrl-C ends\n", server.port(), wishes.job.c_str());
  watch.make_anew();
  event_base_dispatch(events.get());
  return success;
}

int watch_job(Options options) {
  std::error_code wrong;
  if (!fs::is_regular_file(options.wishes.job, wrong)) {
    return refuse(bad_file, "found no file " + options.wishes.job);
  }
  std::unique_ptr<PassingFolder> passing;
  if (options.wishes.folder.empty()) {
    passing = std::make_unique<PassingFolder>();
    options.wishes.folder = passing->path();
  }
  fs::create_directories(options.wishes.folder, wrong);
  if (wrong) {
    return refuse(bad_file,
                  "cannot make the folder " + options.wishes.folder + ": " + wrong.message());
  }
  try {
    return serve(options.wishes, options.port);
  } catch (const std::runtime_error& error) {
    return refuse(bad_file, error.what());
  }
}

}  // namespace

void add_watch(CommandLine& program) {
  const Verb verb = program.verb(
      "watch", "Make proof, template and cuts anew at each save, on a page that reloads itself");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->wishes.job, "The job file").required();
  verb.option("--into", Takes::file, options->wishes.folder,
              "Keep the outputs in this folder; without it they go when the watch ends");
  verb.option("--port", options->port,
              "Port of the page, on this machine alone; a free one where not given")
      .between(1024, 65535);
  verb.option("--shop", Takes::file, options->wishes.shop, "As for proof");
  verb.option("--prices", Takes::file, options->wishes.prices, "As for proof");
  verb.option("--paper", Takes::word, options->wishes.paper, "As for template")
      .known(paper_names());
  verb.option("--cutter", Takes::file, options->wishes.cutter, "As for cuts").known(cutter_names());
  verb.option("--language", Takes::word, options->wishes.language, "As for each of them")
      .known(languages());
  verb.runs([options] { return watch_job(*options); });
}

}  // namespace mullion::cli
