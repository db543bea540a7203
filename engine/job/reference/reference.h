#pragma once

// The reference of the job file for those who write one: every element and attribute, what it may
// be, what holds where it is left out and what it means. All of it is read from the annotations of
// job.xsd, which is compiled in, as are the examples.

#include <string>
#include <string_view>

namespace mullion {

std::string_view job_schema();  // job.xsd, as it is

// Markdown, with tables and links between them.
std::string job_file_reference();

}  // namespace mullion
