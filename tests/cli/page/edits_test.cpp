// What changes jobs: edits, their undoing, new jobs and pictures; and that nothing is lost.

#include <signal.h>
#include <sys/resource.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/cli/page/client.h"
#include "tests/oracle/program.h"

namespace fs = std::filesystem;
using namespace page_test;

namespace {

const std::string job = "/api/jobs/one";

Json state_edit(const std::string& name, const Json& value) {
  return {{"kind", "state"}, {"name", name}, {"value", value}};
}

Json on(const Json& state, const Json& edit) {
  return {{"on", state.at("fingerprint")}, {"edits", Json::array({edit})}};
}

std::string text_of(const Json& state, const std::string& name) {
  for (const Json& measure : state.at("measures")) {
    if (measure.at("name") == name) return measure.at("text");
  }
  return "none";
}

}  // namespace

TEST_CASE("an edit changes the file and gives the new state with its drawing") {
  const std::string folder = folder_of_jobs("edit"), file = folder + "/one.xml";
  const Served served(folder);
  const Json before = served.get(job).json();
  CHECK(before.at("can_undo") == false);
  CHECK(text_of(before, "border.left") == "3");
  Json body = on(before, state_edit("border.left", "2 1/2"));
  body["draw"] = "front";
  const Response done = served.post(job + "/edits", body);
  REQUIRE(done.status == 200);
  const Json after = done.json();
  CHECK(text_of(after, "border.left") == "2 1/2");
  CHECK(text_of(after, "outer.width") == "15 1/4");
  CHECK(after.at("drawing").at("svg").get<std::string>().rfind("<svg", 0) == 0);
  CHECK(after.at("can_undo") == true);
  const Json check = Json::parse(oracle::mullion({"check", file, "--json"}).out);
  CHECK(check.at("borders").at("left").at("text") == "2 1/2 in");
  CHECK(served.get(job).json().at("fingerprint") == after.at("fingerprint"));
}

TEST_CASE("every dimension can be stated by its name, and then says so") {
  const std::string folder = oracle::scratch_folder("every-name");
  fs::copy(oracle::gallery("pictures"), folder + "/pictures", fs::copy_options::recursive);
  fs::copy_file(oracle::gallery("seven-picture-collage.xml"), folder + "/one.xml");
  const Served served(folder);
  const Json before = served.get(job).json();
  for (const Json& measure : before.at("measures")) {
    const std::string name = measure.at("name");
    INFO(name);
    const Response response =
        served.post(job + "/previews", on(before, state_edit(name, measure.at("text"))));
    REQUIRE(response.status == 200);
    const Json state = response.json();
    CHECK(state.at("preview") == true);
    if (state.at("mat").is_null()) continue;  // found only because something else gave way
    for (const Json& again : state.at("measures")) {
      if (again.at("name") != name) continue;
      CHECK(again.at("ticks") == measure.at("ticks"));
      if (name.find("reveal") == std::string::npos) CHECK(again.at("stated") == true);
    }
  }
  CHECK(oracle::read_file(folder + "/one.xml") ==
        oracle::read_file(oracle::gallery("seven-picture-collage.xml")));
}

TEST_CASE("undo gives the same bytes, also after the server was killed and started again") {
  const std::string folder = folder_of_jobs("undo"), file = folder + "/one.xml";
  const std::string original = oracle::read_file(file);
  std::string edited;
  {
    Served served(folder);
    Json state = served.get(job).json();
    for (const char* value : {"2", "2 1/2", "4"}) {
      state = served.post(job + "/edits", on(state, state_edit("border.top", value))).json();
    }
    edited = oracle::read_file(file);
    CHECK(served.end(SIGKILL) == 128 + SIGKILL);
  }
  const Served served(folder);
  Json state = served.get(job).json();
  CHECK(text_of(state, "border.top") == "4");
  for (int i = 0; i < 3; ++i) {
    CHECK(state.at("can_undo") == true);
    state = served.post(job + "/undo", Json{{"on", state.at("fingerprint")}}).json();
  }
  CHECK(oracle::read_file(file) == original);
  CHECK(state.at("can_undo") == false);
  CHECK(served.post(job + "/undo", Json::object()).status == 409);
  for (int i = 0; i < 3; ++i) state = served.post(job + "/redo", Json::object()).json();
  CHECK(oracle::read_file(file) == edited);
}

TEST_CASE("a preview writes nothing") {
  const std::string folder = folder_of_jobs("preview"), file = folder + "/one.xml";
  const std::string original = oracle::read_file(file);
  const Served served(folder);
  const Json state = served.get(job).json();
  const Json preview =
      served.post(job + "/previews", on(state, state_edit("border.left", "1"))).json();
  CHECK(preview.at("preview") == true);
  CHECK(text_of(preview, "border.left") == "1");
  CHECK(oracle::read_file(file) == original);
  CHECK(served.get(job + "/front.svg?fp=" + preview.at("fingerprint").get<std::string>()).status ==
        200);
  CHECK(served.get(job).json().at("fingerprint") == state.at("fingerprint"));
}

TEST_CASE("two tabs that edit one job lose nothing, and one hears of the other") {
  const std::string folder = folder_of_jobs("tabs");
  const Served served(folder);
  const Json both_see = served.get(job).json();
  const Connection stream(served.port());
  stream.send("GET " + job + "/events HTTP/1.1\r\nHost: " + served.host() +
              "\r\nCookie: " + served.cookie() + "\r\n\r\n");
  stream.receive(5, ":\n\n");
  CHECK(served.post(job + "/edits", on(both_see, state_edit("title", "Of one tab"))).status == 200);
  CHECK(stream.receive(5, "\"}\n\n").find("event: changed") != std::string::npos);
  // On the text from before: it belongs elsewhere in the text, and is made there.
  const Response other = served.post(job + "/edits", on(both_see, state_edit("border.left", "2")));
  REQUIRE(other.status == 200);
  CHECK(other.json().at("job").at("title") == "Of one tab");
  CHECK(text_of(other.json(), "border.left") == "2");
  // On the same words: refused, and told what they are now.
  const Response late = served.post(job + "/edits", on(both_see, state_edit("title", "Late")));
  CHECK(late.status == 409);
  CHECK(late.json().at("problems")[0].at("code") == "edit-changed-meanwhile");
  CHECK(late.json().at("state").at("job").at("title") == "Of one tab");
}

TEST_CASE("a refused edit says why, and the job stays as it is") {
  const std::string folder = folder_of_jobs("refused-edit"), file = folder + "/one.xml";
  const std::string original = oracle::read_file(file);
  const Served served(folder);
  const Json state = served.get(job).json();
  const Response wrong = served.post(job + "/edits", on(state, state_edit("border.lefft", "1")));
  CHECK(wrong.status == 409);
  CHECK(wrong.json().at("problems")[0].at("message").get<std::string>().find("left") !=
        std::string::npos);
  CHECK(wrong.json().at("state").at("fingerprint") == state.at("fingerprint"));
  CHECK(served.post(job + "/edits", on(state, {{"kind", "nonsense"}})).status == 400);
  CHECK(served.post(job + "/edits", std::string("{")).status == 400);
  CHECK(served.post(job + "/edits", std::string(2'000'000, ' ')).status == 413);
  CHECK(served.post("/api/jobs/none/edits", on(state, state_edit("title", "x"))).status == 404);
  CHECK(oracle::read_file(file) == original);
}

TEST_CASE("on a full disk the edit is refused, the job is whole, and later edits are taken") {
  const std::string folder = folder_of_jobs("full"), file = folder + "/one.xml";
  const std::string original = oracle::read_file(file);
  const Served served(folder);
  const Json state = served.get(job).json();
  rlimit usual{};
  const rlimit little{64, RLIM_INFINITY};  // bytes of a file: as on a disk that is full
  REQUIRE(::prlimit(served.process(), RLIMIT_FSIZE, &little, &usual) == 0);
  const Json edits = on(state, state_edit("border.left", "1"));
  const Response full = served.post(job + "/edits", edits);
  CHECK(full.status == 500);
  CHECK(full.json().at("problems")[0].at("code") == "file-write");
  CHECK(oracle::read_file(file) == original);
  REQUIRE(::prlimit(served.process(), RLIMIT_FSIZE, &usual, nullptr) == 0);
  CHECK(served.post(job + "/edits", edits).status == 200);
}

TEST_CASE("a job that was deleted is not made again by an edit") {
  const std::string folder = folder_of_jobs("deleted");
  const Served served(folder);
  const Json state = served.get(job).json();
  fs::remove(folder + "/one.xml");
  CHECK(served.post(job + "/edits", on(state, state_edit("border.left", "1"))).status == 404);
  CHECK(!fs::exists(folder + "/one.xml"));
}

TEST_CASE("a job begins from sizes as they are said, or as a copy") {
  const std::string folder = folder_of_jobs("new");
  const Served served(folder);
  const Response made = served.post("/api/jobs", Json{{"unit", "in"},
                                                      {"title", "Nine by the sea"},
                                                      {"customer", "Wren Tolland"},
                                                      {"pictures", "8x10 *2\n5 x 7 Pier\n"},
                                                      {"layers", 2}});
  REQUIRE(made.status == 201);
  CHECK(made.json().at("name") == "Nine-by-the-sea");
  const Json state = served.get("/api/jobs/Nine-by-the-sea").json();
  CHECK(state.at("pictures").size() == 3);
  CHECK(state.at("pictures")[2].at("id") == "Pier");
  CHECK(state.at("layers").size() == 2);
  CHECK(!state.at("mat").is_null());

  const Json copy = served.post("/api/jobs", Json{{"copy_of", "sub/two"}}).json();
  CHECK(copy.at("name") == "sub/two-2");
  CHECK(oracle::read_file(folder + "/sub/two-2.xml") == oracle::read_file(folder + "/sub/two.xml"));

  const Response wrong = served.post("/api/jobs", Json{{"pictures", "8x10\nnonsense\n"}});
  CHECK(wrong.status == 422);
  CHECK(wrong.json().at("problems")[0].at("line") == 2);
  const Json outside =
      served.post("/api/jobs", Json{{"name", "../../up"}, {"pictures", "8x10"}}).json();
  CHECK(outside.at("name").get<std::string>().find('/') == std::string::npos);

  const Json sizes =
      served.post("/api/sizes", Json{{"said", "8 1/2 x 11 *3"}, {"unit", "in"}}).json();
  CHECK(sizes.at("sizes")[0].at("width") == "8 1/2");
  CHECK(sizes.at("sizes")[0].at("count") == 3);
  const Json kept =
      served
          .post("/api/sizes",
                Json{{"said", "8 x 8"},
                     {"unit", "in"},
                     {"keep", {{"width", 3000}, {"height", 2000}, {"given", "width"}}}})
          .json();
  CHECK(kept.at("sizes")[0].at("height") == "5 5/16");  // 8 x 2/3, on 1/16 in
}

TEST_CASE("a dropped picture is copied beside the job, never over another one") {
  const std::string folder = folder_of_jobs("dropped");
  const Served served(folder);
  const std::string dune = oracle::read_file(oracle::gallery("pictures/dune.png"));
  const std::string boat = oracle::read_file(oracle::gallery("pictures/boat.png"));
  const Json first = served.post(job + "/images?file=My%20p.PNG", dune).json();
  CHECK(first.at("path") == "pictures/My-p.png");
  CHECK(first.at("pixels").at("width") > 0);
  CHECK(oracle::read_file(folder + "/pictures/My-p.png") == dune);
  CHECK(served.post(job + "/images?file=p.png", dune).json().at("path") == "pictures/p-2.png");
  CHECK(oracle::read_file(folder + "/pictures/p.png") == boat);
  CHECK(served.post(job + "/images?file=p.png", boat).json().at("path") == "pictures/p.png");
  CHECK(served.post(job + "/images?file=..%2F..%2Fx.png", dune).json().at("path") ==
        "pictures/x.png");
  CHECK(served.post(job + "/images?file=x.png", std::string("no picture")).status == 422);
}

TEST_CASE("outlines are kept beside the pictures, listed, and stated as a shape") {
  const std::string folder = folder_of_jobs("outlines");
  const Served served(folder);
  const std::string leaf =
      "<svg xmlns=\"http://www.w3.org/2000/svg\"><path id=\"leaf\" "
      "d=\"M0 0 L8 2 L6 9 Z\"/><path id=\"line\" d=\"M0 0 L1 1\"/>"
      "<path d=\"M0 0 H5 V5 Z\"/></svg>";
  const Json kept = served.post(job + "/outlines?file=A%20leaf.svg", leaf).json();
  CHECK(kept.at("path") == "pictures/A-leaf.svg");
  CHECK(kept.at("paths") == Json({"leaf"}));
  CHECK(oracle::read_file(folder + "/pictures/A-leaf.svg") == leaf);
  const std::string one = "<svg><path d=\"M0 0 H5 V5 Z\"/></svg>";
  CHECK(served.post(job + "/outlines?file=A-leaf.svg", one).json() ==
        Json({{"path", "pictures/A-leaf-2.svg"}, {"paths", {""}}}));
  CHECK(served.post(job + "/outlines?file=..%2F..%2Fetc.svg", one).json().at("path") ==
        "pictures/etc.svg");
  for (const std::string& bad : {std::string("no drawing"), std::string("<svg/>"),
                                 std::string("<svg><path d=\"M 0 zero\"/></svg>")}) {
    CHECK(served.post(job + "/outlines?file=bad.svg", bad).status == 422);
  }
  CHECK(served.post(job + "/outlines?file=large.svg", std::string((4u << 20) + 1, ' ')).status ==
        413);
  CHECK_FALSE(fs::exists(folder + "/pictures/bad.svg"));
  const Json listed = served.get(job + "/outlines").json().at("outlines");
  REQUIRE(listed.size() == 3);
  CHECK(listed[1].at("path") == "pictures/A-leaf.svg");
  CHECK(listed[1].at("paths") == Json({"leaf"}));
  CHECK(served.get("/api/jobs/sub%2Ftwo/outlines").json().at("outlines").empty());
  CHECK(served.get("/api/jobs/none/outlines").status == 404);
  // The shape is stated by three values at once.
  const Json before = served.get(job).json();
  const std::string opening = before.at("openings")[0].at("name");
  const Response done =
      served.post(job + "/edits", Json{{"on", before.at("fingerprint")},
                                       {"edits",
                                        {state_edit(opening + ".shape", "outline"),
                                         state_edit(opening + ".file", kept.at("path")),
                                         state_edit(opening + ".path", "leaf")}}});
  REQUIRE(done.status == 200);
  const Json shape = done.json().at("openings")[0].at("shape");
  CHECK(shape == Json({{"kind", "outline"}, {"file", kept.at("path")}, {"path", "leaf"}}));
  CHECK_FALSE(done.json().at("mat").is_null());
}

TEST_CASE("suggestions come while one looks on, and what is taken is what was shown") {
  const std::string folder = folder_of_jobs("ideas");
  const Served served(folder);
  const std::string name =
      served
          .post("/api/jobs",
                Json{{"title", "Five"}, {"pictures", "8x10 *2; 5x7 *2; 4x6"}, {"unit", "in"}})
          .json()
          .at("name");
  const std::string path = "/api/jobs/" + name;
  const Json before = served.get(path).json();
  CHECK(served.post(path + "/suggestions", Json{{"most", 4}}).status == 202);
  REQUIRE(
      within(20, [&] { return served.get(path + "/suggestions").json().at("running") == false; }));
  const Json found = served.get(path + "/suggestions").json();
  CHECK(found.at("looked_at") > 0);
  CHECK(found.at("problems").empty());
  REQUIRE(found.at("suggestions").size() == 4);
  const Json& idea = found.at("suggestions")[1];
  const Json after = served
                         .post(path + "/edits",
                               Json{{"on", before.at("fingerprint")}, {"edits", idea.at("edits")}})
                         .json();
  CHECK(after.at("mat").at("width") == idea.at("width"));
  CHECK(after.at("mat").at("height") == idea.at("height"));
  for (const char* side : {"left", "right", "top"}) {  // stated borders are kept
    CHECK(text_of(after, std::string("border.") + side) == "3");
  }
}

TEST_CASE("a search for suggestions is stopped, and one that cannot be made says why") {
  const std::string folder = folder_of_jobs("stop");
  const Served served(folder);
  const std::string name =
      served.post("/api/jobs", Json{{"title", "Many"}, {"pictures", "8x10 *12; 5x7 *12"}})
          .json()
          .at("name");
  const std::string path = "/api/jobs/" + name + "/suggestions";
  served.post(path, Json::object());
  CHECK(served.get(path).json().at("running") == true);
  const Response stopped = served.ask("DELETE", path,
                                      {{"Host", served.host()},
                                       {"Cookie", served.cookie()},
                                       {"Origin", "http://" + served.host()}});
  CHECK(stopped.status == 200);
  CHECK(within(2, [&] { return served.get(path).json().at("running") == false; }));
  served.post("/api/jobs", Json{{"name", "crowd"}, {"pictures", "8x10 *49"}});
  served.post("/api/jobs/crowd/suggestions", Json::object());
  CHECK(within(10, [&] {
    const Json told = served.get("/api/jobs/crowd/suggestions").json();
    return told.at("running") == false && told.at("problems").size() == 1 &&
           told.at("problems")[0].at("code") == "suggest-many";
  }));
}

TEST_CASE("a conflict offers what resolves it, and taking that gives a mat of the size told") {
  const std::string folder = folder_of_jobs("conflict");
  const Served served(folder);
  Json state = served.get(job).json();
  state = served.post(job + "/edits", on(state, state_edit("outer.width", "12"))).json();
  CHECK(state.at("mat").is_null());
  const Json problem = state.at("problems")[0];
  CHECK(problem.at("severity") == "error");
  const Json remedies = problem.at("remedies");
  REQUIRE(!remedies.empty());
  CHECK(remedies[0].at("words") == "an outer width of 15 3/4 in");
  CHECK(problem.at("measures") ==
        Json({"opening.p.width", "outer.width", "border.left", "border.right"}));
  for (const Json& remedy : remedies) {
    INFO(remedy.dump());
    const Json resolved = served
                              .post(job + "/previews", Json{{"on", state.at("fingerprint")},
                                                            {"edits", remedy.at("edits")}})
                              .json();
    CHECK(!resolved.at("mat").is_null());
    for (const Json& left : resolved.at("problems")) CHECK(left.at("severity") != "error");
  }
}

TEST_CASE("a finish is kept by name and taken by another job") {
  const std::string folder = folder_of_jobs("finishes");
  const Served served(folder);
  Json state = served.get(job).json();
  state = served
              .post(job + "/edits",
                    on(state, {{"kind", "add"},
                               {"element", "layer"},
                               {"attributes",
                                {{"board", "Slate"}, {"colour", "#3f5563"}, {"reveal", "3/8"}}}}))
              .json();
  REQUIRE(state.at("layers").size() == 2);
  Json keep{{"name", "Oat over slate"}, {"layers", state.at("layers")}, {"frame", nullptr}};
  CHECK(served.get("/api/finishes").json().at("shop").is_null());
  const Response nowhere = served.post("/api/finishes", keep);
  CHECK(nowhere.status == 409);
  CHECK(nowhere.json().at("problems")[0].at("code") == "page-no-shop");
  keep["shop"] = "Fern & Rule";
  REQUIRE(served.post("/api/finishes", keep).status == 200);
  CHECK(served.get("/api/finishes").json().at("shop") == "Fern & Rule");
  const std::string schema = std::string(MULLION_SOURCE) + "/engine/shop/shop.xsd";
  CHECK(oracle::run({"xmllint", "--noout", "--schema", schema, folder + "/shop.xml"}).status == 0);
  const Json kept = served.get("/api/finishes?job=sub%2Ftwo").json().at("finishes");
  REQUIRE(kept.size() == 1);
  CHECK(kept[0].at("name") == "Oat over slate");
  const Json other = served.get("/api/jobs/sub%2Ftwo").json();
  const Json taken = served
                         .post("/api/jobs/sub%2Ftwo/edits", Json{{"on", other.at("fingerprint")},
                                                                 {"edits", kept[0].at("edits")}})
                         .json();
  REQUIRE(taken.at("layers").size() == 2);
  for (const char* word : {"board", "colour", "thickness", "reveal"}) {
    CHECK(taken.at("layers")[1].at(word) == state.at("layers")[1].at(word));
  }
  CHECK(text_of(taken, "layer.2.reveal") == "3/8");
  const std::string before = oracle::read_file(folder + "/shop.xml");
  CHECK(served.post("/api/finishes", keep).json().at("finishes").size() == 1);  // in its place
  CHECK(oracle::read_file(folder + "/shop.xml") == before);
  Json wrong = keep;
  wrong["layers"][0]["colour"] = "blue";
  CHECK(served.post("/api/finishes", wrong).status == 422);
  CHECK(served.post("/api/finishes", Json{{"name", "Bare"}}).status == 422);
}

// 10,000 edits where MULLION_LONG is set, which takes minutes.
TEST_CASE("a server does not grow with the edits that it makes, and all of them can be undone") {
  const std::string folder = folder_of_jobs("hours");
  const std::string original = oracle::read_file(folder + "/one.xml");
  const int edits = std::getenv("MULLION_LONG") == nullptr ? 150 : 10'000;
  const Served served(folder);
  Json state = served.get(job).json();
  for (int i = 0; i < edits; ++i) {
    Json body = on(state, state_edit("border.left", std::to_string(1 + i % 5)));
    body["draw"] = "front";
    state = served.post(job + "/edits", body).json();
    REQUIRE(state.contains("fingerprint"));
  }
  CHECK(served.memory() < 150'000'000);
  for (int i = 0; i < edits; ++i) served.post(job + "/undo", Json::object());
  CHECK(oracle::read_file(folder + "/one.xml") == original);
  CHECK(served.memory() < 150'000'000);
}

TEST_CASE("a job in conflict keeps the drawing of the last layout that closed, marked as such") {
  const std::string folder = folder_of_jobs("stale");
  const std::string draw = job + "?draw=front";
  Json good, bad;
  {
    const Served served(folder);
    good = served.get(draw).json();
    CHECK(good.at("drawing").at("stale") == false);
    CHECK(good.at("stale").is_null());
    Json body = on(good, state_edit("outer.width", "12"));
    body["draw"] = "front";
    const Json preview = served.post(job + "/previews", body).json();
    CHECK(preview.at("drawing").at("stale") == true);
    bad = served.post(job + "/edits", body).json();
    CHECK(bad.at("stale") == preview.at("stale"));
  }
  CHECK(bad.at("mat").is_null());
  CHECK(bad.at("drawing").at("stale") == true);
  CHECK(bad.at("drawing").at("svg") == good.at("drawing").at("svg"));
  for (const char* part : {"mat", "extent", "measures"}) {
    CHECK(bad.at("stale").at(part) == good.at(part));
  }
  for (std::size_t i = 0; i < good.at("openings").size(); ++i) {
    for (const char* part : {"number", "name", "rect", "box", "sight"}) {
      CHECK(bad.at("stale").at("openings")[i].at(part) == good.at("openings")[i].at(part));
    }
  }
  CHECK(bad.at("problems")[0].at("box") == good.at("openings")[0].at("box"));
  // A server that never saw it close looks back through the history.
  const Served again(folder);
  const Json after = again.get(draw).json();
  CHECK(after.at("drawing") == bad.at("drawing"));
  CHECK(after.at("stale") == bad.at("stale"));
  // Where nothing ever closed there is none.
  oracle::write_file(folder + "/never.xml",
                     R"(<job version="1" unit="in" increment="1/16"><layers><layer/></layers>
<outer width="4" height="4"/><arrange><opening id="a" width="5" height="5"/></arrange></job>)");
  const Json never = again.get("/api/jobs/never?draw=front").json();
  CHECK(never.at("problems")[0].at("code") == "layout-conflict");
  CHECK(never.at("stale").is_null());
  CHECK(never.at("drawing").is_null());
}

TEST_CASE("the state tells a rule in the words of the job file") {
  const std::string folder = oracle::scratch_folder("rules");
  const std::string rules = R"(<same-size dimension="width" of="a b"/>
<align edge="top" of="a b" strength="weak"/>
<equal of="border.left border.right"/>
<multiple measure="border.bottom" of="border.top" times="3/2"/>
<fixed length="3 1/2" measure="a.left"/>
<at-least length="2" measure="border.top"/>
<at-most length="40" measure="outer.width"/>
<centred direction="across" on="mat" what="a b"/>
)";
  oracle::write_file(folder + "/one.xml", R"(<job version="1" unit="in" increment="1/16">
<layers><layer/></layers><arrange><column><opening id="a" width="5" height="5"/>
<opening id="b" width="5" height="6"/></column></arrange>
<rules>)" + rules + "</rules></job>");
  const Served served(folder);
  const Json state = served.get(job).json();
  REQUIRE(state.at("rules").size() == 8);
  std::string again;  // what the state says, as elements
  for (const Json& rule : state.at("rules")) {
    again += "<" + rule.at("kind").get<std::string>();
    const bool usual = rule.at("attributes").at("strength") == "required";
    for (const auto& [name, value] : rule.at("attributes").items()) {
      if (name != "strength" || !usual)
        again += " " + name + "=\"" + value.get<std::string>() + "\"";
    }
    again += "/>\n";
  }
  CHECK(again == rules);
}

TEST_CASE(
    "of a job with many faults all are told, and one that an edit would add is refused as such") {
  const std::string folder = oracle::scratch_folder("faults");
  std::string pictures;
  for (int i = 0; i < 40; ++i)
    pictures += "<picture id=\"p" + std::to_string(i) + "\" width=\"8\"/>\n";
  oracle::write_file(folder + "/one.xml", "<job version=\"1\" unit=\"in\">\n<pictures>\n" +
                                              pictures +
                                              "</pictures>\n<layers><layer/></layers>\n</job>\n");
  const Served served(folder);
  Json state = served.get(job).json();
  CHECK(state.at("problems").size() >= 40);
  const Response refused = served.post(job + "/edits", on(state, state_edit("layer.1.ply", "99")));
  CHECK(refused.status == 409);
  REQUIRE(refused.json().at("problems").size() == 1);
  CHECK(refused.json().at("problems")[0].at("message").get<std::string>().find("ply=\"99\"") !=
        std::string::npos);
  // One that mends a fault is made although others stay.
  state = served.post(job + "/edits", on(state, state_edit("picture.p39.height", "10"))).json();
  CHECK(state.at("problems").size() >= 39);
  oracle::write_file(folder + "/one.xml", "<job version=\"1\" unit=\"in\">\n<pictures>\n" +
                                              pictures + pictures + pictures + pictures + pictures +
                                              pictures +
                                              "</pictures>\n<layers><layer/></layers>\n</job>\n");
  state = served.get(job).json();
  CHECK(state.at("problems").size() == 201);
  const Json last = state.at("problems").back();
  CHECK(last.at("code") == "job-more-problems");
  CHECK(last.at("message").get<std::string>().find("not listed: ") != std::string::npos);
}
