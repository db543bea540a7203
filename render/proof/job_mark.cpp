#include <glib.h>

#include "engine/job/write.h"
#include "render/proof/sheet.h"

namespace mullion::proof {

std::string job_hash(const Job& job) {
  const std::string text = write_job(job);
  gchar* sum = g_compute_checksum_for_data(
      G_CHECKSUM_SHA256, reinterpret_cast<const guchar*>(text.data()), text.size());
  std::string hash(sum);
  g_free(sum);
  return hash;
}

std::string job_mark(const Job& job) {
  constexpr std::size_t digits = 8;
  return job_hash(job).substr(0, digits);
}

}  // namespace mullion::proof
