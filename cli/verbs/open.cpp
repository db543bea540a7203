#include <event2/event.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <stdexcept>

#include "cli/known_words.h"
#include "cli/verbs/paper_names.h"
#include "cli/language.h"
#include "cli/page/browser.h"
#include "cli/page/remaking.h"
#include "cli/page/server.h"
#include "cli/page/site.h"
#include "cli/report.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

namespace fs = std::filesystem;

struct OpenOptions {
  std::string what = ".", into, stock, shop, prices, sizes, paper, cutter, language;
  int port = 0;
  bool no_browser = false;
  Locale locale;
};

constexpr timeval between_looks{0, 150'000};

using Events = std::unique_ptr<event_base, decltype(&event_base_free)>;
using Event = std::unique_ptr<event, decltype(&event_free)>;

void end_loop(evutil_socket_t, short, void* events) {
  event_base_loopbreak(static_cast<event_base*>(events));
}

struct Looking {
  page::Site& site;
  page::Remaking* remaking;
};

void look_around(evutil_socket_t, short, void* looking) {
  const auto* all = static_cast<const Looking*>(looking);
  all->site.look();
  if (all->remaking != nullptr) all->remaking->look();
}

// What was named, else what lies beside the jobs or in their folder "shop".
std::string shop_file(const std::string& named, const std::string& folder, const char* usual) {
  if (!named.empty()) return named;
  std::error_code ignored;
  for (const char* below : {"", "shop"}) {
    const fs::path path = fs::path(folder) / below / usual;
    if (fs::is_regular_file(path, ignored)) return path.string();
  }
  return {};
}

page::SiteOptions site_options(const OpenOptions& options, const std::string& folder,
                               const std::string& single) {
  page::SiteOptions out;
  out.folder = folder;
  out.single = single;
  out.wishes = {shop_file(options.shop, folder, "shop.xml"),
                shop_file(options.prices, folder, "prices.xml"),
                shop_file(options.stock, folder, "stock.xml"),
                options.paper,
                options.cutter,
                {},
                options.language};
  out.sizes = options.sizes;
  out.locale = options.locale;
  return out;
}

int serve(const OpenOptions& options, const std::string& folder, const std::string& single) {
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);  // a file that may grow no more is refused like a full disk
  const Events events(event_base_new(), event_base_free);
  if (!events) throw std::runtime_error("cannot wait for events");
  const page::SiteOptions chosen = site_options(options, folder, single);
  page::Site site(chosen);
  page::Server server(events.get(), options.port);
  site.gate().stands_at(server.port());
  site.listens_by([&server](const std::string& job) { return server.has_listeners(job); },
                  [&server](const std::string& job, const char* event, const page::Json& data) {
                    server.tell(job, event, page::dumped(data));
                  });
  server.answers_by([&site](const page::Request& request) { return site.answer(request); });
  std::unique_ptr<page::Remaking> remaking;
  if (!options.into.empty()) {
    remaking = std::make_unique<page::Remaking>(options.what, options.into, chosen.wishes);
  }
  Looking looking{site, remaking.get()};
  const Event interrupted(evsignal_new(events.get(), SIGINT, end_loop, events.get()), event_free);
  const Event terminated(evsignal_new(events.get(), SIGTERM, end_loop, events.get()), event_free);
  const Event timer(event_new(events.get(), -1, EV_PERSIST, look_around, &looking), event_free);
  event_add(interrupted.get(), nullptr);
  event_add(terminated.get(), nullptr);
  event_add(timer.get(), &between_looks);
  const std::string address =
      site.gate().address() + (single.empty() ? "" : "&job=" + page::percent_encoded(single));
  std::printf("%s\nshows %s, for this machine alone; Ctrl-C ends\n", address.c_str(),
              options.what.c_str());
  std::fflush(stdout);
  if (!options.no_browser && !page::show_in_browser(address)) {
    report({{Severity::note,
             "page-browser",
             "no browser could be started; open the address above in one",
             {},
             {}}});
  }
  event_base_dispatch(events.get());
  return success;
}

int open_page(OpenOptions options) {
  std::error_code wrong;
  const bool is_folder = fs::is_directory(options.what, wrong);
  if (!is_folder && !fs::is_regular_file(options.what, wrong)) {
    return refuse(bad_file, "found no file or folder " + options.what);
  }
  if (!is_folder && fs::path(options.what).extension() != ".xml") {
    return bad_option("JOB", "found \"" + options.what + "\"; expected a name that ends in .xml");
  }
  if (is_folder && !options.into.empty()) {
    return bad_option("--into", "found a folder of jobs; expected one job");
  }
  if (!options.into.empty()) {
    fs::create_directories(options.into, wrong);
    if (wrong) {
      return refuse(bad_file, "cannot make the folder " + options.into + ": " + wrong.message());
    }
  }
  const fs::path path = options.what;
  const std::string parent = path.parent_path().string();
  const std::string folder = is_folder ? options.what : parent.empty() ? "." : parent;
  try {
    return serve(options, folder, is_folder ? std::string() : path.stem().string());
  } catch (const std::runtime_error& error) {
    return refuse(bad_file, error.what());
  }
}

}  // namespace

void add_open(CommandLine& program) {
  const Verb verb = program.verb(
      "open", "Design, show and print jobs on a page in the browser, served to this machine alone");
  auto options = std::make_shared<OpenOptions>();
  verb.argument("JOB", Takes::job_file, options->what,
                "The job file, or a folder of jobs; this folder where not given");
  verb.option("--into", Takes::file, options->into,
              "Make proof, template and cuts anew into this folder at each save of the job");
  verb.flag("--no-browser", options->no_browser, "Print the page's address and start no browser");
  verb.option("--port", options->port, "Port of the page; a free one where not given")
      .between(1024, 65535);
  verb.option("--stock", Takes::file, options->stock,
              "The shop's boards; stock.xml or shop/stock.xml beside the jobs where not given");
  verb.option("--shop", Takes::file, options->shop, "As for proof; likewise shop.xml");
  verb.option("--prices", Takes::file, options->prices, "As for proof; likewise prices.xml");
  verb.option("--sizes", Takes::file, options->sizes, "The shop's own list of frame sizes");
  verb.option("--paper", Takes::word, options->paper, "As for template").known(paper_names());
  verb.option("--cutter", Takes::file, options->cutter, "As for cuts").known(cutter_names());
  add_language_option(verb, options->locale);
  verb.runs([options] {
    options->language = options->locale.tag();
    return open_page(*options);
  });
}

}  // namespace mullion::cli
