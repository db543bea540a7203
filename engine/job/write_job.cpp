#include <pugixml.hpp>

#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/job/write_parts.h"
#include "engine/xml/colour.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

void write_head(ElementWriter& out, const Job& job) {
  out.integer("version", job.version);
  out.text("reference", job.reference);
  out.integer_unless("revision", job.revision, 1);
  out.text("date", job.date);
  out.integer_unless("quantity", job.quantity, 1);
  out.text("unit", word_for(job.scale.unit));
  out.length("increment", job.scale.increment);
  if (!job.customer.empty() || !job.email.empty()) {
    ElementWriter customer = out.child("customer");
    customer.attribute("name", job.customer);
    customer.text("email", job.email);
  }
  out.content("title", job.title);
  out.content("note", job.note);
  if (job.wall != Job{}.wall) out.child("wall").colour("colour", job.wall);
}

void write_picture(ElementWriter out, const Picture& picture, const Usual& usual) {
  out.attribute("id", picture.id);
  out.length("width", picture.width);
  out.length("height", picture.height);
  out.text("image", picture.image);
  if (picture.float_gap) {
    out.length("float", *picture.float_gap);
  } else if (picture.overlap) {
    out.length_unless("overlap", *picture.overlap, usual.overlap);
  }
  out.decimal_unless("zoom", picture.zoom, 1);
  out.decimal_unless("pan-x", picture.pan_x, 0);
  out.decimal_unless("pan-y", picture.pan_y, 0);
  out.yes("turn", picture.may_turn);
  out.text("group", picture.group);
  if (picture.order > 0) out.integer("order", picture.order);
  out.text("turned", word_for(picture.turned));
}

void write_layer(ElementWriter out, const Layer& layer, bool is_top, Unit unit) {
  const Layer plain;
  out.attribute("name", layer.name);
  out.text("board", layer.board);
  out.colour("colour", layer.colour);
  if (layer.core != plain.core) out.colour("core", layer.core);
  out.integer("ply", layer.ply);
  out.measured_unless("thickness", layer.thickness, thickness_of(layer.ply, unit));
  if (!is_top && !layer.spacer) {
    const Length r = usual_for(unit).reveal;
    out.sides("reveal", reveal_names, layer.reveal, Sides{r, r, r, r});
  }
  out.yes("spacer", layer.spacer);
  out.yes("grain", layer.grain);
  out.list("only", layer.only);
}

void write_layers(ElementWriter out, const Job& job) {
  constexpr double thousandths = 1000;
  out.decimal_unless("bevel", job.bevel_millidegrees / thousandths, 45);
  if (job.reveal_reading != RevealReading::seen) {
    out.text("reveal-is", word_for(job.reveal_reading));
  }
  for (const Layer& layer : job.layers) {
    write_layer(out.child("layer"), layer, &layer == &job.layers.front(), job.scale.unit);
  }
}

void write_frame(ElementWriter out, const Frame& frame, const Usual& usual) {
  out.length("rabbet-width", frame.rabbet_width);
  out.length("rabbet-height", frame.rabbet_height);
  out.length_unless("allowance", frame.allowance, usual.allowance);
  out.length_unless("lip", frame.lip, usual.lip);
  out.text("moulding", frame.moulding);
  out.length_unless("face", frame.face_width, usual.face);
  out.colour("colour", frame.colour);
}

void write_bottom(ElementWriter& out, const Borders& borders) {
  switch (borders.bottom) {
    case Borders::Bottom::equal:
      return;
    case Borders::Bottom::extra:
      out.length("bottom-extra", borders.extra);
      return;
    case Borders::Bottom::ratio:
      out.text("bottom-ratio",
               format_fraction({borders.ratio_numerator, borders.ratio_denominator}));
      return;
    case Borders::Bottom::optical:
      out.text("bottom", "optical");
      return;
    case Borders::Bottom::given:
      if (borders.bottom_size) out.length("bottom", *borders.bottom_size);
      return;
  }
}

bool says_nothing(const Borders& borders) {
  return !borders.left && !borders.right && !borders.top && !borders.least &&
         borders.bottom == Borders::Bottom::equal;
}

void write_borders(ElementWriter out, const Borders& borders) {
  const bool given = borders.bottom == Borders::Bottom::given;
  if (given && borders.left && borders.left == borders.right && borders.left == borders.top &&
      borders.left == borders.bottom_size) {
    out.length("all", *borders.left);
  } else {
    if (borders.left && borders.left == borders.right) {
      out.length("sides", *borders.left);
    } else {
      if (borders.left) out.length("left", *borders.left);
      if (borders.right) out.length("right", *borders.right);
    }
    if (borders.top) out.length("top", *borders.top);
    write_bottom(out, borders);
  }
  if (borders.least) out.length("least", *borders.least);
}

void write_outer(ElementWriter& out, const Job& job) {
  if (!job.outer_width && !job.outer_height) return;
  ElementWriter outer = out.child("outer");
  if (job.outer_width) outer.length("width", *job.outer_width);
  if (job.outer_height) outer.length("height", *job.outer_height);
}

}  // namespace

std::string write_job(const Job& job) {
  const Usual& usual = usual_for(job.scale.unit);
  FileWriter file("job", job.scale.unit);
  ElementWriter& out = file.root();
  write_head(out, job);
  if (!job.pictures.empty()) {
    ElementWriter pictures = out.child("pictures");
    for (const Picture& picture : job.pictures) {
      write_picture(pictures.child("picture"), picture, usual);
    }
  }
  write_layers(out.child("layers"), job);
  write_outer(out, job);
  if (job.frame) write_frame(out.child("frame"), *job.frame, usual);
  if (!says_nothing(job.borders)) write_borders(out.child("borders"), job.borders);
  if (is_arranged(job)) write_arrangement(out.child("arrange"), job);
  if (!job.rules.empty()) write_rules(out.child("rules"), job.rules);

  return file.text();
}

}  // namespace mullion
