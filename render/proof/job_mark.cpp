#include <glib.h>

#include "engine/job/write.h"
#include "render/proof/sheet.h"

namespace mullion::proof {

std::string job_mark(const Job& job) {
  constexpr std::size_t digits = 8;
  const std::string text = write_job(job);
  gchar* sum = g_compute_checksum_for_data(
      G_CHECKSUM_SHA256, reinterpret_cast<const guchar*>(text.data()), text.size());
  std::string mark(sum, digits);
  g_free(sum);
  return mark;
}

}  // namespace mullion::proof
