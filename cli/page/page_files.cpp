#include "cli/page/page_files.h"

namespace mullion::cli::page {

std::string_view page_file(std::string_view name) {
  for (const PageFile& file : page_files()) {
    if (file.name == name) return file.text;
  }
  return {};
}

const char* type_of(std::string_view name) {
  if (name.ends_with(".html")) return "text/html; charset=utf-8";
  if (name.ends_with(".js") || name.ends_with(".mjs")) return "text/javascript; charset=utf-8";
  if (name.ends_with(".css")) return "text/css; charset=utf-8";
  if (name.ends_with(".svg")) return "image/svg+xml";
  if (name.ends_with(".json")) return "application/json";
  if (name.ends_with(".png")) return "image/png";
  return "text/plain; charset=utf-8";
}

}  // namespace mullion::cli::page
