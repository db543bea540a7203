#pragma once

// What the page's server answers: every address, from a request to a reply. Changes of jobs are in
// changes.cpp, what takes its time in long_work.cpp.

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>

#include "cli/page/desk.h"
#include "cli/page/files.h"
#include "cli/page/gate.h"
#include "cli/page/http.h"
#include "cli/page/ideas.h"
#include "cli/page/images.h"
#include "cli/page/listing.h"
#include "cli/page/papers.h"
#include "engine/edit/edited_file.h"
#include "engine/locale/locale.h"

namespace mullion::cli::page {

struct SiteOptions {
  std::string folder;
  std::string single;  // the one job that was opened; empty: the folder
  PaperWishes wishes;  // shop, prices, stock: below the folder or anywhere the framer named
  std::string sizes;   // the shop's own frame sizes
  Locale locale;
};

class Site {
 public:
  explicit Site(SiteOptions options);
  ~Site();

  Gate& gate() { return gate_; }
  Answer answer(const Request& request);

  // Called now and then: what has changed of the jobs that somebody looks at. `tell` sends an event
  // to those who listen to a job.
  using Tell = std::function<void(const std::string& job, const char* event, const Json& data)>;
  void listens_by(std::function<bool(const std::string& job)> has_listeners, Tell tell);
  void look();

 private:
  struct Route;
  // What a handler is given: the request, and what stands in the address at each star.
  struct Asked {
    const Request& request;
    std::vector<std::string> parts;

    const std::string& name() const { return parts.front(); }
  };
  static const std::vector<Route>& routes();

  Answer page(const Asked&);
  Answer page_file(const Asked&);
  Answer about(const Asked&);
  Answer jobs(const Asked&);
  Answer new_job(const Asked&);
  Answer sizes(const Asked&);
  Answer job(const Asked&);
  Answer thumbnail(const Asked&);
  Answer front(const Asked&);
  Answer back(const Asked&);
  Answer image(const Asked&);
  Answer new_image(const Asked&);
  Answer outlines(const Asked&);
  Answer new_outline(const Asked&);
  Answer edits(const Asked&);
  Answer previews(const Asked&);
  Answer undo(const Asked&);
  Answer redo(const Asked&);
  Answer find_ideas(const Asked&);
  Answer ideas(const Asked&);
  Answer stop_ideas(const Asked&);
  Answer frames(const Asked&);
  Answer paper(const Asked&);
  Answer save_papers(const Asked&);
  Answer events(const Asked&);
  Answer boards(const Asked&);
  Answer finishes(const Asked&);
  Answer keep_finish(const Asked&);
  Answer explain(const Asked&);
  Answer choices(const Asked&);

  struct Wish {
    Json body;
    edit::EditedFile& file;
  };
  using Change = std::variant<Reply, Result<edit::Saved>>;
  tl::expected<Wish, Reply> wish_of(const Asked& asked);
  static tl::expected<edit::Edit, Reply> edit_of(const Wish& wish);
  Answer changed(const Asked& asked, Change (*make)(Wish&));

  LaidPtr found(const Asked& asked, std::string_view fingerprint);
  Json state(const std::string& name, const Laid& laid, bool preview, std::string_view side,
             int layer);
  Json drawing(const std::string& name, const Laid& laid, std::string_view side, int layer);
  std::string front_of(const std::string& name, const Laid& laid);
  std::string back_of(const Laid& laid, int layer) const;
  std::optional<std::string> image_file(const std::string& job, const std::string& image) const;
  PaperWishes wishes_of(const Asked& asked) const;
  std::optional<Reply> leads_out(const std::string& name, const Laid& laid) const;
  const Stock* stock();
  std::string shop_file() const;

  edit::EditedFile* edited(const std::string& name);  // null where there is no such job
  Json state_asked_for(const std::string& name, const Laid& laid, bool preview, const Json& body);
  Reply refused(const std::string& name, const Problems& problems, const Json& body);
  Reply saved(const std::string& name, const Problems& notes, const Json& body);
  tl::expected<std::string, std::string> kept_beside(const Asked& asked, const std::string& ending);
  tl::expected<std::string, std::string> created(const std::string& name, const std::string& text);
  void tell_changed(const std::string& name, const Laid& laid);

  SiteOptions options_;
  Files files_;
  Gate gate_;
  Desk desk_;
  Images images_;
  Listing listing_;
  Ideas ideas_;
  std::optional<Stock> stock_;
  Stamp stock_stamp_;
  std::function<bool(const std::string&)> has_listeners_;
  Tell tell_;
  std::map<std::string, edit::EditedFile, std::less<>> edited_;
  std::map<std::string, std::string> listened_;  // and the fingerprint that was told last
};

Reply json(const Json& value, int status = 200);
Reply refusal(int status, const char* code, std::string message);
Reply no_job(const std::string& name);

}  // namespace mullion::cli::page
