#include <algorithm>
#include <pugixml.hpp>
#include <set>
#include <sstream>

#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/starting/starting.h"
#include "engine/xml/words.h"

namespace mullion::starting {
namespace {

// What a name may not hold becomes a hyphen; each name is given once.
class Ids {
 public:
  std::string take(const std::string& name, std::size_t number) {
    std::string id = name_from(name);
    if (id.empty()) id = "picture-" + std::to_string(number);
    std::string free = id;
    for (int n = 2; !taken_.insert(free).second; ++n) free = id + "-" + std::to_string(n);
    return free;
  }

 private:
  std::set<std::string> taken_ = {"mat", "outer", "border"};
};

Group group_of(Along along, Length gap, std::vector<Node> children) {
  Group group;
  group.along = along;
  group.gap = gap;
  group.gaps.resize(children.size() - 1);
  for (Gap& between : group.gaps) between.size = gap;
  group.children = std::move(children);
  return group;
}

// One picture alone, up to four in a row, more in rows of about as many as there are rows.
Node arranged(const std::vector<Picture>& pictures, Length gap) {
  constexpr std::size_t most_in_one_row = 4;
  const auto opening = [](const Picture& picture) {
    Opening out;
    out.id = picture.id;
    out.picture = picture.id;
    return Node{std::move(out)};
  };
  std::size_t in_row = 1;
  while (in_row * in_row < pictures.size()) ++in_row;
  if (pictures.size() <= most_in_one_row) in_row = pictures.size();
  std::vector<Node> rows;
  for (std::size_t at = 0; at < pictures.size(); at += in_row) {
    std::vector<Node> row;
    for (std::size_t i = at; i < std::min(at + in_row, pictures.size()); ++i) {
      row.push_back(opening(pictures[i]));
    }
    rows.push_back(row.size() == 1 ? std::move(row.front())
                                   : Node{group_of(Along::row, gap, std::move(row))});
  }
  if (rows.size() == 1) return std::move(rows.front());
  return Node{group_of(Along::column, gap, std::move(rows))};
}

std::vector<Layer> layers_of(const std::vector<std::string>& boards, Unit unit) {
  // The colours of an invented shop: a light top mat, darker ones below.
  constexpr Colour colours[] = {{0xec, 0xe5, 0xd4}, {0x6f, 0x7f, 0x5c}, {0x4a, 0x3d, 0x33}};
  const Length reveal = usual_for(unit).reveal;
  std::vector<Layer> layers;
  for (const std::string& board : boards) {
    Layer layer;
    layer.name = usual_layer_name(layers.size() + 1);
    layer.board = board;
    layer.thickness = thickness_of(layer.ply, unit);
    layer.colour = colours[std::min(layers.size(), std::size(colours) - 1)];
    if (!layers.empty()) layer.reveal = {reveal, reveal, reveal, reveal};
    layers.push_back(std::move(layer));
  }
  return layers;
}

void set_borders(Job& job, const Start& start) {
  Borders& borders = job.borders;
  if (start.bottom_extra) {
    borders.bottom = Borders::Bottom::extra;
    borders.extra = *start.bottom_extra;
  }
  if (start.rabbet_width) {
    borders.least = start.border;
    return;
  }
  borders.left = borders.right = borders.top =
      start.border.value_or(usual_for(start.unit).large_border);
  if (start.bottom_extra) return;
  borders.bottom = Borders::Bottom::given;
  borders.bottom_size = borders.top;
}

void set_frame(Job& job, const Start& start) {
  if (!start.rabbet_width) return;
  const Usual& usual = usual_for(start.unit);
  Frame frame;
  frame.rabbet_width = *start.rabbet_width;
  frame.rabbet_height = *start.rabbet_height;
  frame.allowance = usual.allowance;
  frame.lip = usual.lip;
  frame.face_width = usual.face;
  job.frame = frame;
}

Job job_of(const Start& start) {
  Job job;
  job.scale = usual_scale(start.unit);
  job.reference = start.reference;
  job.customer = start.customer;
  job.title = start.title;
  Ids ids;
  for (const StartingPicture& given : start.pictures) {
    Picture picture;
    picture.id = ids.take(given.name, job.pictures.size() + 1);
    picture.width = given.width;
    picture.height = given.height;
    picture.image = given.image;
    picture.overlap = usual_for(start.unit).overlap;
    job.pictures.push_back(std::move(picture));
  }
  job.layers = layers_of(start.boards, start.unit);
  set_frame(job, start);
  set_borders(job, start);
  job.arrangement = arranged(job.pictures, start.gap);
  return job;
}

void comment_before(pugi::xml_node node, const std::string& text) {
  if (!node || text.empty()) return;
  node.parent().insert_child_before(pugi::node_comment, node).set_value((" " + text + " ").c_str());
}

void comment(pugi::xml_node job, const Start& start) {
  const std::string overlap = format_exact(usual_for(start.unit).overlap, start.unit);
  comment_before(job.child("pictures"),
                 "Measure each picture itself, from edge to edge. The mat covers " + overlap +
                     " of it on each side; overlap=\"...\" on a picture changes that.");
  pugi::xml_node picture = job.child("pictures").child("picture");
  for (const StartingPicture& given : start.pictures) {
    if (!given.remark.empty()) comment_before(picture, "Size " + given.remark + ".");
    picture = picture.next_sibling("picture");
  }
  comment_before(job.child("layers"),
                 "The boards, top mat first. Measure your own board and write thickness=\"...\". "
                 "A layer below may have its own reveal=\"...\".");
  comment_before(job.child("frame"),
                 "The mat is cut smaller than the rabbet by an allowance, in all; "
                 "allowance=\"...\" changes that.");
  comment_before(job.child("borders"),
                 start.rabbet_width
                     ? "What the frame leaves over; bottom-extra=\"...\" makes the bottom wider."
                     : "Around the openings. Write sides, top and bottom instead of all where they "
                       "differ.");
  comment_before(job.child("arrange"),
                 "The openings, seen from the front. Rows and columns may hold each other.");
}

std::string commented(const std::string& xml, const Start& start) {
  pugi::xml_document document;
  document.load_buffer(xml.data(), xml.size(), pugi::parse_full);
  pugi::xml_node job = document.child("job");
  comment_before(job,
                 "Lengths are in the unit that the job states, or name their own: 8 1/2, "
                 "8.5 in, 216 mm.");
  comment(job, start);
  std::ostringstream text;
  document.save(text, "  ", pugi::format_default, pugi::encoding_utf8);
  return text.str();
}

}  // namespace

Result<Started> start_job(const Start& start, const std::string& file) {
  Started out;
  out.xml = commented(write_job(job_of(start)), start);
  Result<Job> job = parse_job(out.xml, file);
  if (!job) return tl::unexpected(std::move(job.error()));
  Result<Layout> layout = lay_out(*job);
  if (!layout) return tl::unexpected(std::move(layout.error()));
  out.job = std::move(*job);
  out.layout = std::move(*layout);
  return out;
}

}  // namespace mullion::starting
