#include "tests/oracle/pdf_layers.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "tests/oracle/program.h"

namespace oracle {
namespace {

using Json = nlohmann::ordered_json;

std::string checked(const std::vector<std::string>& words) {
  Run result = run(words);
  if (result.status != 0) throw std::runtime_error(words[0] + ": " + result.err);
  return std::move(result.out);
}

Json objects_of(const std::string& path) {
  return Json::parse(
      checked({"qpdf", "--json", "--json-key=qpdf", "--json-stream-data=none", path}));
}

const Json& value_of(const Json& file, const std::string& reference) {
  return file.at("qpdf").at(1).at("obj:" + reference).at("value");
}

std::string catalog_of(const Json& file) {
  return file.at("qpdf").at(1).at("trailer").at("value").at("/Root").get<std::string>();
}

std::string name_of(const Json& file, const std::string& reference) {
  const Json& group = value_of(file, reference);
  if (group.at("/Type") != "/OCG") throw std::runtime_error(reference + " is no layer");
  const auto name = group.at("/Name").get<std::string>();
  if (name.rfind("u:", 0) != 0) throw std::runtime_error("qpdf gives a name as bytes: " + name);
  return name.substr(2);
}

std::vector<std::string> groups_of(const Json& file) {
  const Json& properties = value_of(file, catalog_of(file)).at("/OCProperties");
  return properties.at("/D").at("/Order").get<std::vector<std::string>>();
}

}  // namespace

std::vector<std::string> pdf_layers(const std::string& path) {
  const Json file = objects_of(path);
  std::vector<std::string> names;
  for (const std::string& group : groups_of(file)) names.push_back(name_of(file, group));
  return names;
}

std::string without_layer(const std::string& path, const std::string& name) {
  const Json file = objects_of(path);
  for (const std::string& group : groups_of(file)) {
    if (name_of(file, group) != name) continue;
    Json catalog = value_of(file, catalog_of(file));
    catalog["/OCProperties"]["/D"]["/OFF"] = Json::array({group});
    const Json header = file.at("qpdf").at(0);
    const Json update{
        {"qpdf",
         Json::array({header, Json{{"obj:" + catalog_of(file), Json{{"value", catalog}}}}})}};
    write_file(path + ".json", update.dump());
    checked({"qpdf", path, "--update-from-json=" + path + ".json", path + ".without.pdf"});
    return path + ".without.pdf";
  }
  throw std::runtime_error("the file has no layer \"" + name + "\"");
}

}  // namespace oracle
