// What the page's server answers, address by address.

#include <catch2/catch.hpp>
#include <filesystem>
#include <pugixml.hpp>

#include "tests/cli/page/client.h"
#include "tests/oracle/program.h"

namespace fs = std::filesystem;
using namespace page_test;

namespace {

const Json* measure_called(const Json& state, const std::string& name) {
  for (const Json& measure : state.at("measures")) {
    if (measure.at("name") == name) return &measure;
  }
  return nullptr;
}

std::string text_of(const Json& state, const std::string& name) {
  const Json* measure = measure_called(state, name);
  return measure == nullptr ? "none" : measure->at("text").get<std::string>();
}

std::string folder_with(const std::string& name, const std::string& gallery_job) {
  const std::string folder = oracle::scratch_folder(name);
  fs::copy(oracle::gallery("pictures"), folder + "/pictures", fs::copy_options::recursive);
  fs::copy(oracle::gallery("outlines"), folder + "/outlines", fs::copy_options::recursive);
  fs::copy(oracle::gallery("shop"), folder + "/shop", fs::copy_options::recursive);
  fs::copy_file(oracle::gallery(gallery_job + ".xml"), folder + "/" + gallery_job + ".xml");
  return folder;
}

}  // namespace

TEST_CASE("the state of a job says every size that check says, by the names that edits take") {
  const Served served(folder_with("state", "seven-picture-collage"));
  const Json state = served.get("/api/jobs/seven-picture-collage").json();
  const Json check = Json::parse(
      oracle::mullion({"check", oracle::gallery("seven-picture-collage.xml"), "--json"}).out);
  CHECK(state.at("mat").at("width").at("ticks") == check.at("width").at("ticks"));
  CHECK(state.at("mat").at("height").at("ticks") == check.at("height").at("ticks"));
  for (const char* side : {"left", "top", "right", "bottom"}) {
    const Json* measure = measure_called(state, std::string("border.") + side);
    REQUIRE(measure != nullptr);
    CHECK(measure->at("ticks") == check.at("borders").at(side).at("ticks"));
  }
  REQUIRE(state.at("openings").size() == check.at("openings").size());
  for (std::size_t i = 0; i < check.at("openings").size(); ++i) {
    for (const char* what : {"left", "top", "width", "height"}) {
      CHECK(state.at("openings")[i].at("rect").at(what).at("ticks") ==
            check.at("openings")[i].at(what).at("ticks"));
    }
  }
  CHECK(state.at("problems").size() == check.at("problems").size());
}

TEST_CASE("a dimension's line is as long as its value, in millimetres") {
  const Served served(folder_with("lines", "double-mat"));
  const Json state = served.get("/api/jobs/double-mat").json();
  REQUIRE(state.at("measures").size() >= 9);
  for (const Json& measure : state.at("measures")) {
    INFO(measure.dump());
    const double ticks = measure.at("ticks");
    CHECK((measure.at("to").get<double>() - measure.at("from").get<double>()) * 1600 ==
          Approx(ticks));
  }
  CHECK(text_of(state, "layer.2.reveal") != "none");
}

TEST_CASE("a folder's jobs are listed with their sizes, and other files are not") {
  const std::string folder = folder_of_jobs("list");
  oracle::write_file(folder + "/wrong.xml", "<job version=\"1\"><pictrues/></job>");
  oracle::write_file(folder + "/other.xml", "<stock version=\"1\"/>");
  const Served served(folder);
  const Json jobs = served.get("/api/jobs").json().at("jobs");
  REQUIRE(jobs.size() == 3);
  CHECK(jobs[0].at("name") == "one");
  CHECK(jobs[0].at("width").at("text") == "15 3/4");
  CHECK(jobs[0].at("problem") == "");
  CHECK(jobs[1].at("name") == "sub/two");
  CHECK(jobs[1].at("title") == "Second");
  CHECK(jobs[2].at("errors") > 0);
  CHECK(jobs[2].at("problem") != "");
  CHECK(served.get("/api/jobs/sub%2Ftwo").json().at("job").at("title") == "Second");
}

TEST_CASE("the drawings are XML without styles, to scale, with pictures by their addresses") {
  const std::string folder = folder_of_jobs("drawings");
  const Served served(folder);
  for (const char* path :
       {"/api/jobs/one/front.svg", "/api/jobs/one/back.svg", "/api/jobs/one/thumbnail.svg"}) {
    INFO(path);
    const Response drawn = served.get(path);
    CHECK(drawn.headers.at("content-type") == "image/svg+xml");
    pugi::xml_document document;
    REQUIRE(document.load_string(drawn.body.c_str()));
    CHECK(drawn.body.find("style=") == std::string::npos);
    CHECK(drawn.body.find("<style") == std::string::npos);
  }
  pugi::xml_document front;
  front.load_string(served.get("/api/jobs/one/front.svg").body.c_str());
  const pugi::xml_node image = front.select_node("//image").node();
  const std::string address = image.attribute("href").value();
  const Response picture = served.get(address);
  CHECK(picture.status == 200);
  CHECK(picture.headers.at("content-type") == "image/jpeg");
  CHECK(picture.body.rfind("\xFF\xD8", 0) == 0);
  // The picture of 10 x 8 in, in mm.
  const pugi::xml_node clip = front.select_node("//clipPath[@id='m-picture-1']/rect").node();
  CHECK(clip.attribute("width").as_double() == Approx(254));
  CHECK(clip.attribute("height").as_double() == Approx(203.2));
}

TEST_CASE("a job that cannot be read has a state that says where and what") {
  const std::string folder = folder_of_jobs("wrong");
  oracle::write_file(folder + "/one.xml", "<job version=\"1\"><pictrues/></job>");
  const Served served(folder);
  const Json state = served.get("/api/jobs/one").json();
  CHECK(state.at("mat").is_null());
  const Json& problem = state.at("problems").at(0);
  CHECK(problem.at("severity") == "error");
  CHECK(problem.at("line") == 1);
  CHECK(state.at("problems").dump().find("did you mean \\\"pictures\\\"?") != std::string::npos);
  CHECK(served.get("/api/jobs/one/front.svg").status == 404);
}

TEST_CASE("papers are the bytes that the verbs write") {
  const std::string folder = folder_with("papers", "double-mat");
  const Served served(folder, {"--language", "en"});
  const std::string job = folder + "/double-mat.xml", out = folder + "/out";
  oracle::mullion({"cuts", job, "-o", out + ".pdf", "--language", "en"});
  CHECK(served.get("/api/jobs/double-mat/papers/cuts.pdf").body == oracle::read_file(out + ".pdf"));
  oracle::mullion({"cuts", job, "-o", out + ".html", "--language", "en"});
  CHECK(served.get("/api/jobs/double-mat/papers/cuts.html").body ==
        oracle::read_file(out + ".html"));
  oracle::mullion({"template", job, "-o", out + "-a4.pdf", "--paper", "a4", "--language", "de"});
  CHECK(served.get("/api/jobs/double-mat/papers/template.pdf?paper=a4&language=de").body ==
        oracle::read_file(out + "-a4.pdf"));
  const Response wrong = served.get("/api/jobs/double-mat/papers/template.pdf?paper=nonsense");
  CHECK(wrong.status == 422);
  CHECK(wrong.json().at("problems")[0].at("message") != "");
  CHECK(served.get("/api/jobs/double-mat/papers/nonsense.pdf").status == 404);

  const Response saved =
      served.post("/api/jobs/double-mat/papers", Json{{"kinds", {"cuts.pdf", "estimate.txt"}}});
  CHECK(saved.json().at("saved") == Json({"double-mat-cuts.pdf", "double-mat-estimate.txt"}));
  CHECK(oracle::read_file(folder + "/double-mat-cuts.pdf") == oracle::read_file(out + ".pdf"));
}

TEST_CASE("boards come from the shop's stock, and one that is not there is said to be unknown") {
  const std::string folder = folder_with("boards", "double-mat");
  {
    const Served served(folder);
    const Json boards = served.get("/api/boards").json();
    CHECK(boards.at("from") == "stock.xml");
    CHECK(boards.at("boards").size() > 10);
    for (const Json& layer : served.get("/api/jobs/double-mat").json().at("layers")) {
      CHECK(layer.at("known") == true);
    }
  }
  std::string job = oracle::read_file(folder + "/double-mat.xml");
  const std::size_t at = job.find("board=\"") + 7;
  job.replace(at, job.find('"', at) - at, "Nobody's");
  oracle::write_file(folder + "/double-mat.xml", job);
  const Served served(folder);
  CHECK(served.get("/api/jobs/double-mat").json().at("layers")[0].at("known") == false);
  CHECK(served.get("/api/jobs/double-mat/front.svg").body.find("url(#m-unknown)") !=
        std::string::npos);
}

TEST_CASE("frames that fit, codes explained, versions side by side") {
  const Served served(folder_with("others", "double-mat"));
  const Json frames = served.get("/api/jobs/double-mat/frames").json().at("frames");
  REQUIRE(!frames.empty());
  const Json before = served.get("/api/jobs/double-mat").json();
  const Json taken = served
                         .post("/api/jobs/double-mat/edits", Json{{"on", before.at("fingerprint")},
                                                                  {"edits", frames[0].at("edits")}})
                         .json();
  CHECK(taken.at("frame").at("rabbet_width") == frames[0].at("rabbet").at("width"));
  CHECK(taken.at("mat").at("width") == frames[0].at("width"));
  CHECK(taken.at("mat").at("height") == frames[0].at("height"));
  CHECK(taken.at("outer").at("width").is_null());
  CHECK(served.get("/api/explain/check-bar-thin").json().at("advice") != "");
  CHECK(served.get("/api/explain/nonsense").status == 404);
  const Json choices = served.get("/api/choices?jobs=double-mat,double-mat").json().at("choices");
  CHECK(choices.size() == 2);
  CHECK(choices[1].at("letter") == "B");
}

TEST_CASE("a saved job is told to those who look at it, and so is one that has gone") {
  const std::string folder = folder_of_jobs("events");
  const Served served(folder);
  const Connection stream(served.port());
  stream.send("GET /api/jobs/one/events HTTP/1.1\r\nHost: " + served.host() +
              "\r\nCookie: " + served.cookie() + "\r\n\r\n");
  CHECK(stream.receive(5, ":\n\n").find("text/event-stream") != std::string::npos);
  oracle::write_file(folder + "/new.xml", job_text("Other"));
  fs::rename(folder + "/new.xml", folder + "/one.xml");
  const std::string told = stream.receive(5, "\n\n");
  CHECK(told.find("event: changed") != std::string::npos);
  const std::string fingerprint = served.get("/api/jobs/one").json().at("fingerprint");
  CHECK(told.find(fingerprint) != std::string::npos);
  fs::remove(folder + "/one.xml");
  CHECK(stream.receive(5, "event: gone").find("event: gone") != std::string::npos);
  CHECK(served.get("/api/jobs/one").status == 404);
}

TEST_CASE("an address that is not there, or is asked in another way, is refused in JSON") {
  const Served served(folder_of_jobs("addresses"));
  CHECK(served.get("/api/nonsense").status == 404);
  CHECK(served.get("/nonsense").json().at("problems")[0].at("code") == "page-address");
  CHECK(served.post("/api/about", Json::object()).status == 405);
  CHECK(served.get("/api/jobs/none").status == 404);
  CHECK(served.get("/%ZZ").status == 400);
}
