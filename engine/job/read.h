#pragma once

// Reads a job file: our own XML vocabulary, described word by word in job.xsd beside this header.
//
// Lengths without a unit are in the job's unit. Whatever is wrong is reported with its line and
// column, as many independent problems in one run as are sensible. Refused: a document type
// declaration (hence entities of one's own), text that is not UTF-8, paths that leave the folder
// of the job file, and anything beyond the limits here and in engine/xml/limits.h. XML comments are
// not kept.

#include <cstddef>
#include <string>
#include <string_view>

#include "engine/job/job.h"
#include "engine/xml/limits.h"

namespace mullion {

inline constexpr std::size_t most_openings = 2000;
inline constexpr std::size_t most_pictures = 2000;
inline constexpr std::size_t most_layers = 64;
inline constexpr std::size_t most_rules = 5000;
inline constexpr std::size_t most_grooves = 16;    // around one thing
inline constexpr std::size_t longest_note = 4000;  // the job's note
inline constexpr int most_copies = 10'000;
inline constexpr int most_revisions = 9'999;
inline constexpr double largest_zoom = 100;

// What a job must hold to be of use. For suggestions the pictures are enough: `arrange` and
// `layers` may be left out (one plain top mat is then assumed).
enum class Need { arrangement, pictures };

// A file that cannot be read gives the code "file-read", without a place.
Result<Job> read_job(const std::string& path, Need need = Need::arrangement);

// `file` is used in messages and kept as Job::file. So many problems are listed; a last note says
// how many are not.
Result<Job> parse_job(std::string_view xml, const std::string& file, Need need = Need::arrangement,
                      std::size_t most = most_problems);

// False for a job that was read for its pictures alone and holds no `arrange`.
bool is_arranged(const Job& job);

}  // namespace mullion
