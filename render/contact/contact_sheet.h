#pragma once

// A contact sheet of suggestions: each piece small, numbered, with its size and its composition.
//
// All pieces are on one page; each is as large as its place allows, so that they are not to one
// scale. The problem is a picture file that cannot be drawn.

#include <string>
#include <vector>

#include "engine/locale/locale.h"
#include "engine/mat/mat.h"
#include "engine/suggest/composition.h"
#include "render/paper/document.h"
#include "render/proof/piece.h"

namespace mullion {

struct ContactPicture {
  const Job* job = nullptr;
  const Mat* mat = nullptr;
  const proof::Photographs* photographs = nullptr;
  suggest::Composition composition = suggest::Composition::collage;
};

// One page, Letter for jobs in inches and A4 (ISO 216) otherwise.
Result<std::string> render_contact_sheet(const std::vector<ContactPicture>& pictures,
                                         paper::Format format, const Locale& locale = {});

}  // namespace mullion
