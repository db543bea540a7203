#include "cli/page/body.h"

#include "cli/page/site.h"

namespace mullion::cli::page {

std::string text_in(const Json& body, const char* name, const std::string& usual) {
  const auto found = body.find(name);
  return found != body.end() && found->is_string() ? found->get<std::string>() : usual;
}

int number_in(const Json& body, const char* name, int usual) {
  const auto found = body.find(name);
  return found != body.end() && found->is_number_integer() ? found->get<int>() : usual;
}

tl::expected<Json, Reply> body_of(const Request& request) {
  if (request.body.size() > largest_edit) {
    return tl::unexpected(refusal(413, "page-body", "found more than 1 MB; that is the limit"));
  }
  Json body = Json::parse(request.body, nullptr, false);
  if (!body.is_object()) {
    return tl::unexpected(refusal(400, "page-body", "expected an object in JSON"));
  }
  return body;
}

}  // namespace mullion::cli::page
