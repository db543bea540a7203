#include <algorithm>

#include "engine/file/input.h"
#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/xml/document.h"

namespace mullion {
namespace {

// The children of <job>, each at most once and in any order.
class Children {
 public:
  explicit Children(Element& job) {
    for (const pugi::xml_node& node :
         job.children({"customer", "title", "note", "wall", "pictures", "layers", "outer", "frame",
                       "borders", "arrange", "rules"})) {
      if (nodes_.emplace(node.name(), node).second) continue;
      job.reading().problem(
          offset_of(node), "job-repeated-element",
          "found <" + std::string(node.name()) + "> twice in <job>; expected it once");
    }
  }

  pugi::xml_node get(std::string_view name) const {
    const auto found = nodes_.find(name);
    return found == nodes_.end() ? pugi::xml_node() : found->second;
  }

 private:
  std::map<std::string, pugi::xml_node, std::less<>> nodes_;
};

template <class Read>
void with(Reading& reading, const pugi::xml_node& node, Read read) {
  if (!node) return;
  Element element(reading, node);
  read(element);
}

void require_child(Element& job, const Children& children, const char* name, const char* why) {
  if (children.get(name)) return;
  job.problem("job-missing-element",
              "found no <" + std::string(name) + "> in <job>; expected one, " + why);
}

void read_customer(Element& customer, Job& job) {
  customer.children({});
  customer.required("name", "a name");
  job.customer = customer.line("name");
  job.email = customer.email("email");
}

void read_parts(Element& root, const Children& children, Need need, Job& job) {
  Reading& reading = root.reading();
  const auto part = [&](const char* name, auto read) { with(reading, children.get(name), read); };
  part("customer", [&](Element& e) { read_customer(e, job); });
  part("title", [&](Element& e) { job.title = tidy(e.content(longest_line)); });
  part("note", [&](Element& e) { job.note = e.content(longest_note); });
  part("wall", [&](Element& e) {
    e.children({});
    e.required("colour", "a colour");
    e.colour("colour", job.wall);
  });
  part("pictures", [&](Element& e) { job.pictures = read_pictures(e); });
  part("frame", [&](Element& e) { job.frame = read_frame(e); });
  part("outer", [&](Element& e) { read_outer(e, job); });
  part("borders", [&](Element& e) { job.borders = read_borders(e); });

  Names names;
  for (const Picture& picture : job.pictures) names.pictures.emplace(picture.id, &picture);
  part("layers", [&](Element& e) { read_layers(e, names, job); });
  part("arrange", [&](Element& e) { read_arrangement(e, names, job); });
  check_mentioned(reading, names);
  part("rules", [&](Element& e) { job.rules = read_rules(e, names); });

  if (need == Need::arrangement) {
    require_child(root, children, "layers", "with a <layer> for each board");
    require_child(root, children, "arrange", "with an opening, a row or a column");
  } else if (job.layers.empty()) {
    job.layers.push_back(Layer{});
    job.layers.front().states_colour = false;
    job.layers.front().name = usual_layer_name(1);
  }
}

}  // namespace

Result<Job> parse_job(std::string_view xml, const std::string& file, Need need, std::size_t most) {
  Reading reading(xml, file, "job", most);
  pugi::xml_document document;
  Job job;
  job.file = file;
  if (const pugi::xml_node node = load_document(reading, document)) {
    Element root(reading, node);
    if (read_head(root, job)) read_parts(root, Children(root), need, job);
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  job.remarks = reading.notes();
  return job;
}

Result<Job> read_job(const std::string& path, Need need) {
  const auto bytes = read_input(path, largest_job_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_job(*bytes, path, need);
}

bool is_arranged(const Job& job) {
  const auto* opening = std::get_if<Opening>(&job.arrangement.what);
  return opening == nullptr || !opening->id.empty();
}

}  // namespace mullion
