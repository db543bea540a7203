// What changes jobs: edits, their undoing, new jobs and pictures.

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "cli/page/body.h"
#include "cli/page/site.h"
#include "engine/edit/edit_json.h"
#include "engine/job/usual.h"
#include "engine/mat/svg_file.h"
#include "engine/picture/header.h"
#include "engine/starting/said_sizes.h"
#include "engine/xml/limits.h"

namespace mullion::cli::page {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_edited_files = 24;
constexpr std::size_t longest_name = 80;
constexpr int most_names_tried = 1000;
constexpr int deepest_outline = 6;
constexpr std::size_t most_outlines = 500;

std::optional<Unit> unit_in(const std::string& word) {
  if (word == "in") return Unit::inch;
  if (word == "mm") return Unit::millimetre;
  if (word == "cm") return Unit::centimetre;
  return std::nullopt;
}

// Letters, digits and marks that no file system minds; what else there is becomes a hyphen.
std::string file_name(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = byte >= 0x80 || std::isalnum(byte) != 0 || c == '_' || c == '.' || c == '-';
    if (plain && !(out.empty() && c == '.')) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
    if (out.size() >= longest_name && byte < 0x80) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

bool is_fault_of_files(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& problem) {
    return problem.code == "file-write" || problem.code == "file-read";
  });
}

Result<edit::Edit> edit_in(const Json& body) {
  if (!body.contains("edits") || !body["edits"].is_array()) {
    return tl::unexpected(
        Problems{{Severity::error, "page-body", "expected \"edits\": a list of edits", {}, ""}});
  }
  return edit::edit_from_json(dumped({{"kind", "several"}, {"edits", body["edits"]}}));
}

}  // namespace

// --- edits ---------------------------------------------------------------------------------------

edit::EditedFile* Site::edited(const std::string& name) {
  if (files_.stamp(Desk::file_of(name)) == Stamp{}) return nullptr;
  const auto found = edited_.find(name);
  if (found != edited_.end()) return &found->second;
  if (edited_.size() >= most_edited_files) edited_.erase(edited_.begin());
  auto opened = edit::EditedFile::open(files_.path_of(Desk::file_of(name)));
  if (!opened) return nullptr;
  return &edited_.emplace(name, std::move(*opened)).first->second;
}

Json Site::state_asked_for(const std::string& name, const Laid& laid, bool preview,
                           const Json& body) {
  return state(name, laid, preview, text_in(body, "draw"), number_in(body, "layer", 1));
}

Reply Site::refused(const std::string& name, const Problems& problems, const Json& body) {
  Json out = {{"problems", of(problems)}, {"state", nullptr}};
  if (const LaidPtr laid = desk_.now(name)) {
    out["state"] = state_asked_for(name, *laid, false, body);
  }
  return json(out, is_fault_of_files(problems) ? 500 : 409);
}

// The job as it stands after it was saved.
Reply Site::saved(const std::string& name, const Problems& notes, const Json& body) {
  const LaidPtr laid = desk_.now(name);
  if (!laid) return no_job(name);
  tell_changed(name, *laid);
  Json out = state_asked_for(name, *laid, false, body);
  out["notes"] = of(notes);
  return json(out);
}

// What a request to change a job brings along, or the reply that refuses it.
tl::expected<Site::Wish, Reply> Site::wish_of(const Asked& asked) {
  auto body = body_of(asked.request);
  if (!body) return tl::unexpected(body.error());
  edit::EditedFile* file = edited(asked.name());
  if (file == nullptr) return tl::unexpected(no_job(asked.name()));
  return Wish{std::move(*body), *file};
}

tl::expected<edit::Edit, Reply> Site::edit_of(const Wish& wish) {
  auto edit = edit_in(wish.body);
  if (!edit) return tl::unexpected(json({{"problems", of(edit.error())}}, 400));
  return std::move(*edit);
}

Answer Site::edits(const Asked& asked) {
  return changed(asked, [](Wish& wish) -> Change {
    const auto edit = edit_of(wish);
    if (!edit) return edit.error();
    return wish.file.edit(*edit, text_in(wish.body, "on"));
  });
}

Answer Site::undo(const Asked& asked) {
  return changed(asked, [](Wish& wish) -> Change { return wish.file.undo(); });
}

Answer Site::redo(const Asked& asked) {
  return changed(asked, [](Wish& wish) -> Change { return wish.file.redo(); });
}

Answer Site::changed(const Asked& asked, Change (*make)(Wish&)) {
  auto wish = wish_of(asked);
  if (!wish) return wish.error();
  const Change change = make(*wish);
  if (const auto* reply = std::get_if<Reply>(&change)) return *reply;
  const auto& done = std::get<Result<edit::Saved>>(change);
  if (!done) return refused(asked.name(), done.error(), wish->body);
  return saved(asked.name(), done->notes, wish->body);
}

Answer Site::previews(const Asked& asked) {
  auto wish = wish_of(asked);
  if (!wish) return wish.error();
  const auto edit = edit_of(*wish);
  if (!edit) return edit.error();
  const auto text = wish->file.preview(*edit, text_in(wish->body, "on"));
  if (!text) return refused(asked.name(), text.error(), wish->body);
  const LaidPtr laid = desk_.preview(asked.name(), text->text);
  return json(state_asked_for(asked.name(), *laid, true, wish->body));
}

// --- new jobs ------------------------------------------------------------------------------------

Answer Site::sizes(const Asked& asked) {
  const auto body = body_of(asked.request);
  if (!body) return body.error();
  const auto unit = unit_in(text_in(*body, "unit", "in"));
  if (!unit) return refusal(400, "page-body", "expected a unit: in, mm or cm");
  auto said = starting::parse_said_sizes(text_in(*body, "said"), *unit);
  if (!said) return json({{"problems", of(said.error())}}, 422);
  if (const auto keep = body->find("keep"); keep != body->end() && keep->is_object()) {
    const int width = number_in(*keep, "width", 0), height = number_in(*keep, "height", 0);
    if (width < 1 || height < 1) return refusal(400, "page-body", "expected pixels to be kept");
    const Length step = starting::usual_scale(*unit).increment;
    for (starting::SaidSize& one : *said) {
      starting::keep_proportion(one.size, width, height, text_in(*keep, "given") != "height", step);
    }
  }
  Json sizes = Json::array();
  for (const starting::SaidSize& one : *said) {
    sizes.push_back({{"width", exact_number(one.size.width, *unit)},
                     {"height", exact_number(one.size.height, *unit)},
                     {"count", one.count},
                     {"name", one.name}});
  }
  return json({{"sizes", std::move(sizes)}});
}

// A name that no job has yet.
tl::expected<std::string, std::string> Site::created(const std::string& wanted,
                                                     const std::string& text) {
  for (int n = 1; n < most_names_tried; ++n) {
    const std::string name = n == 1 ? wanted : wanted + "-" + std::to_string(n);
    if (files_.stamp(Desk::file_of(name)) != Stamp{}) continue;
    const auto written = files_.create(Desk::file_of(name), text);
    if (written) return name;
    return tl::unexpected(written.error());
  }
  return tl::unexpected("there are too many jobs of the name " + wanted);
}

Answer Site::new_job(const Asked& asked) {
  const auto body = body_of(asked.request);
  if (!body) return body.error();
  const std::string title = text_in(*body, "title"), customer = text_in(*body, "customer");
  std::string name = file_name(text_in(*body, "name"));
  std::string text;
  if (const std::string copied = text_in(*body, "copy_of"); !copied.empty()) {
    auto read = files_.read(Desk::file_of(copied), largest_job_file);
    if (!read) return no_job(copied);
    text = std::move(*read);
    const fs::path folder = fs::path(copied).parent_path();
    if (name.empty()) name = fs::path(copied).filename().string();
    name = (folder / name).string();  // beside its pictures
  } else {
    starting::Start start;
    const auto unit = unit_in(text_in(*body, "unit", "in"));
    if (!unit) return refusal(400, "page-body", "expected a unit: in, mm or cm");
    start.unit = *unit;
    start.customer = customer;
    start.title = title;
    start.gap = usual_for(*unit).gap;
    start.boards.resize(static_cast<std::size_t>(std::clamp(number_in(*body, "layers", 1), 1, 8)));
    const auto said = starting::parse_said_sizes(text_in(*body, "pictures"), *unit);
    if (!said) return json({{"problems", of(said.error())}}, 422);
    for (const starting::SaidSize& one : *said) {
      for (int i = 0; i < one.count; ++i) {
        start.pictures.push_back({one.name, one.size.width, one.size.height, "", ""});
      }
    }
    if (name.empty()) name = file_name(title.empty() ? customer : title);
    if (name.empty()) name = "job";
    auto started = starting::start_job(start, name + ".xml");
    if (!started) return json({{"problems", of(started.error())}}, 422);
    text = std::move(started->xml);
  }
  const auto made = created(name, text);
  if (!made) return refusal(500, "file-write", made.error());
  return json({{"name", *made}}, 201);
}

// --- pictures ------------------------------------------------------------------------------------

Answer Site::new_image(const Asked& asked) {
  const std::string& bytes = asked.request.body;
  if (bytes.size() > largest_image_file) {
    return refusal(413, "page-body", "found more than 96 MB; that is the limit of a picture");
  }
  if (!desk_.now(asked.name())) return no_job(asked.name());
  const auto header = read_image_header(bytes);
  if (!header) return refusal(422, "picture-unreadable", header.error());
  const auto kept = kept_beside(asked, header->kind == ImageKind::jpeg ? ".jpg" : ".png");
  if (!kept) return refusal(500, "file-write", kept.error());
  return json({{"path", *kept},
               {"pixels", {{"width", header->shown_width()}, {"height", header->shown_height()}}}});
}

// A file that was sent, in the folder of the job's pictures; one that is there already is taken.
tl::expected<std::string, std::string> Site::kept_beside(const Asked& asked,
                                                         const std::string& ending) {
  const std::string& bytes = asked.request.body;
  const std::string name = file_name(fs::path(asked.request.asked("file")).filename().string());
  const std::string stem = name.substr(0, name.rfind('.'));
  const std::string base = stem.empty() ? "picture" : stem;
  for (int n = 1; n < most_names_tried; ++n) {
    const std::string path = "pictures/" + base + (n == 1 ? "" : "-" + std::to_string(n)) + ending;
    const std::string file = *image_file(asked.name(), path);
    if (files_.stamp(file) != Stamp{}) {
      const auto there = files_.read(file, largest_image_file);
      if (there && *there == bytes) return path;
      continue;
    }
    if (const auto written = files_.create(file, bytes); !written) {
      return tl::unexpected(written.error());
    }
    return path;
  }
  return tl::unexpected("there are too many pictures of the name " + base);
}

// --- outlines ------------------------------------------------------------------------------------

Answer Site::new_outline(const Asked& asked) {
  if (asked.request.body.size() > largest_svg_file) {
    return refusal(413, "page-body",
                   "found more than 4 MB; that is the limit of an outline's file");
  }
  if (!desk_.now(asked.name())) return no_job(asked.name());
  const auto paths = svg_path_ids(asked.request.body, asked.request.asked("file"));
  if (!paths) return json({{"problems", of(paths.error())}}, 422);
  const auto kept = kept_beside(asked, ".svg");
  if (!kept) return refusal(500, "file-write", kept.error());
  return json({{"path", *kept}, {"paths", *paths}});
}

// The SVG files in the job's folder and below it that have an outline.
Answer Site::outlines(const Asked& asked) {
  if (files_.stamp(Desk::file_of(asked.name())) == Stamp{}) return no_job(asked.name());
  return Later{[this, folder = fs::path(asked.name()).parent_path().string()](Halt&) {
    const std::string below = folder.empty() ? folder : folder + "/";
    Json out = Json::array();
    for (const Files::Listed& listed : files_.list(".svg", deepest_outline, most_outlines)) {
      if (!listed.name.starts_with(below)) continue;
      const auto bytes = files_.read(listed.name, largest_svg_file);
      const auto paths = bytes ? svg_path_ids(*bytes, listed.name) : tl::unexpected(Problems());
      if (paths) out.push_back({{"path", listed.name.substr(below.size())}, {"paths", *paths}});
    }
    return json({{"outlines", std::move(out)}});
  }};
}

}  // namespace mullion::cli::page
