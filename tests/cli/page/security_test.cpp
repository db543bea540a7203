// Who is answered, what may be read, and what broken or greedy clients can do.

#include <catch2/catch.hpp>
#include <filesystem>
#include <memory>
#include <set>

#include "tests/cli/page/client.h"
#include "tests/oracle/program.h"

namespace fs = std::filesystem;
using namespace page_test;

TEST_CASE("the key is exchanged for a cookie that no other site can send") {
  const Served served(folder_of_jobs("key"));
  const Headers host{{"Host", served.host()}};
  CHECK(served.key().size() == 32);
  CHECK(served.ask("GET", "/", host).status == 403);
  CHECK(served.ask("GET", "/?key=00000000000000000000000000000000", host).status == 403);
  const Response first = served.ask("GET", "/?key=" + served.key() + "&job=sub/two", host);
  CHECK(first.status == 303);
  CHECK(first.headers.at("location") == "/#job=sub%2Ftwo");
  const std::string cookie = first.headers.at("set-cookie");
  CHECK(cookie.find("SameSite=Strict") != std::string::npos);
  CHECK(cookie.find("HttpOnly") != std::string::npos);
  CHECK(cookie.find(served.key()) == std::string::npos);
  CHECK(served.get("/api/about").status == 200);
  for (const char* path : {"/api/about", "/api/jobs", "/api/jobs/one", "/page/main.js"}) {
    INFO(path);
    CHECK(served.ask("GET", path, host).status == 403);
  }
}

TEST_CASE("another origin, a rebinding host and a change without origin are refused") {
  const Served served(folder_of_jobs("origins"));
  const std::string path = "/api/about", own = "http://" + served.host();
  const auto status = [&](const std::string& method, const Headers& headers) {
    Headers all = headers;
    all.emplace_back("Cookie", served.cookie());
    return served.ask(method, path, all).status;
  };
  CHECK(status("GET", {{"Host", served.host()}}) == 200);
  CHECK(status("GET", {{"Host", "localhost:" + std::to_string(served.port())}}) == 200);
  CHECK(status("GET", {{"Host", "attacker.example"}}) == 403);
  CHECK(status("GET", {{"Host", "attacker.example:" + std::to_string(served.port())}}) == 403);
  CHECK(status("GET", {{"Host", "127.0.0.1:1"}}) == 403);
  CHECK(status("GET", {{"Host", served.host()}, {"Origin", "http://attacker.example"}}) == 403);
  CHECK(status("GET", {{"Host", served.host()}, {"Origin", "null"}}) == 403);
  CHECK(status("GET", {{"Host", served.host()}, {"Sec-Fetch-Site", "cross-site"}}) == 403);
  CHECK(status("GET", {{"Host", served.host()}, {"Sec-Fetch-Site", "same-site"}}) == 403);
  CHECK(status("GET", {{"Host", served.host()}, {"Sec-Fetch-Site", "same-origin"}}) == 200);
  CHECK(status("POST", {{"Host", served.host()}}) == 403);
  CHECK(status("POST", {{"Host", served.host()}, {"Origin", own}}) == 405);
}

TEST_CASE("every reply forbids inline script, guessing and keeping") {
  const Served served(folder_of_jobs("headers"));
  for (const char* path : {"/", "/api/about", "/api/jobs/one", "/nonsense"}) {
    INFO(path);
    const Response response = served.get(path);
    const std::string policy = response.headers.at("content-security-policy");
    CHECK(policy.find("script-src 'self';") != std::string::npos);
    CHECK(policy.find("unsafe") == std::string::npos);
    CHECK(response.headers.at("x-content-type-options") == "nosniff");
    CHECK(response.headers.at("cache-control") == "no-store");
  }
  const std::string proof =
      served.get("/api/jobs/one/papers/proof.html").headers.at("content-security-policy");
  CHECK(proof.rfind("sandbox;", 0) == 0);
  CHECK(proof.find("script-src") == std::string::npos);
}

TEST_CASE("nothing outside the folder is read, by dots, links or a job's own words") {
  const std::string outer = oracle::scratch_folder("outside"), folder = outer + "/open";
  fs::rename(folder_of_jobs("outside-jobs"), folder);
  oracle::write_file(outer + "/secret.xml", job_text("Secret"));
  fs::copy_file(oracle::gallery("pictures/dune.png"), outer + "/secret.png");
  fs::create_symlink(outer + "/secret.xml", folder + "/link.xml");
  fs::create_directory_symlink(outer, folder + "/up");
  fs::remove(folder + "/pictures/p.png");
  fs::create_symlink(outer + "/secret.png", folder + "/pictures/p.png");
  const Served served(folder);
  for (const char* path :
       {"/api/jobs/..%2Fsecret", "/api/jobs/%2e%2e%2fsecret", "/api/jobs/link",
        "/api/jobs/up%2Fsecret", "/api/jobs/sub%2F..%2F..%2Fsecret", "/api/jobs/..",
        "/../secret.xml", "/page/..%2F..%2Fsecret.xml", "/page/../../secret.xml",
        "/api/jobs/%2Fetc%2Fpasswd", "/api/jobs/one/images/..%2F..%2Fsecret.png",
        "/api/jobs/one/images/pictures%2Fp.png"}) {
    INFO(path);
    CHECK(served.get(path).status == 404);
  }
  CHECK(served.get("/api/jobs").body.find("Secret") == std::string::npos);
  CHECK(served.get("/api/jobs/one/front.svg").body.find("<image") == std::string::npos);
  CHECK(served.get("/api/jobs/one/papers/proof.pdf").status == 403);
}

TEST_CASE("nothing outside the folder is written, by dots or links") {
  const std::string outer = oracle::scratch_folder("written-outside"), folder = outer + "/open";
  fs::rename(folder_of_jobs("written-outside-jobs"), folder);
  oracle::write_file(outer + "/secret.xml", job_text("Secret"));
  oracle::write_file(outer + "/paper.pdf", "kept");
  fs::create_directory(outer + "/elsewhere");
  fs::create_symlink(outer + "/secret.xml", folder + "/link.xml");
  fs::create_symlink(outer + "/paper.pdf", folder + "/one-cuts.pdf");
  fs::create_directory_symlink(outer, folder + "/up");
  fs::remove_all(folder + "/sub/pictures");
  fs::create_directory_symlink(outer + "/elsewhere", folder + "/sub/pictures");
  const std::string secret = oracle::read_file(outer + "/secret.xml");
  const Served served(folder);
  const Json edits{{"on", served.get("/api/jobs/one").json().at("fingerprint")},
                   {"edits", {{{"kind", "state"}, {"name", "title"}, {"value", "Mine"}}}}};
  for (const char* job : {"..%2Fsecret", "link", "up%2Fsecret", "sub%2F..%2F..%2Fsecret"}) {
    INFO(job);
    for (const char* what : {"/edits", "/undo", "/previews"}) {
      CHECK(served.post(std::string("/api/jobs/") + job + what, edits).status == 404);
    }
    CHECK(served.post("/api/jobs", Json{{"name", "stolen"}, {"copy_of", job}}).status == 404);
  }
  const Response made =
      served.post("/api/jobs", Json{{"name", "../up/evil"}, {"pictures", "8x10"}});
  CHECK(made.status == 201);
  CHECK(fs::exists(folder + "/" + made.json().at("name").get<std::string>() + ".xml"));
  const std::string boat = oracle::read_file(oracle::gallery("pictures/boat.png"));
  CHECK(served.post("/api/jobs/sub%2Ftwo/images?file=x.png", boat).status == 500);
  CHECK(served
            .post("/api/jobs/sub%2Ftwo/outlines?file=x.svg",
                  std::string("<svg><path d=\"M0 0 H5 V5 Z\"/></svg>"))
            .status == 500);
  served.post("/api/jobs/one/papers", Json{{"kinds", {"cuts.pdf"}}});
  CHECK(oracle::read_file(outer + "/secret.xml") == secret);
  CHECK(oracle::read_file(outer + "/paper.pdf") == "kept");
  CHECK(fs::is_empty(outer + "/elsewhere"));
  std::set<std::string> there;
  for (const auto& entry : fs::directory_iterator(outer)) there.insert(entry.path().filename());
  CHECK(there == std::set<std::string>{"elsewhere", "open", "paper.pdf", "secret.xml"});
}

TEST_CASE("an outline outside the folder is not read, not even through a link") {
  const std::string outer = oracle::scratch_folder("outline-outside"), folder = outer + "/open";
  fs::create_directory(folder);
  oracle::write_file(outer + "/leaf.svg", "<svg><path d=\"M0 0 H50 V50 Z\"/></svg>");
  fs::create_symlink(outer + "/leaf.svg", folder + "/leaf.svg");
  oracle::write_file(
      folder + "/one.xml",
      "<job version=\"1\" unit=\"in\"><layers><layer/></layers><borders all=\"3\"/><arrange>"
      "<opening id=\"a\" width=\"4\" height=\"4\" shape=\"outline\" file=\"leaf.svg\"/>"
      "</arrange></job>");
  const Served served(folder);
  const Json state = served.get("/api/jobs/one?draw=front").json();
  CHECK(state.at("problems")[0].at("code") == "page-outside");
  CHECK(state.at("mat").is_null());
  CHECK(state.at("drawing").is_null());
  CHECK(served.get("/api/jobs/one/front.svg").status == 404);
  CHECK(served.get("/api/jobs/one/thumbnail.svg").status == 404);
  CHECK(served.get("/api/jobs/one/outlines").json().at("outlines").empty());
  fs::remove(folder + "/leaf.svg");
  fs::copy_file(outer + "/leaf.svg", folder + "/leaf.svg");
  CHECK_FALSE(served.get("/api/jobs/one").json().at("mat").is_null());
}

TEST_CASE("HEAD has the headers of GET and no body") {
  const Served served(folder_of_jobs("head"));
  const Headers headers{{"Host", served.host()}, {"Cookie", served.cookie()}};
  const Response get = served.ask("GET", "/api/jobs/one", headers);
  const Response head = served.ask("HEAD", "/api/jobs/one", headers);
  CHECK(head.status == 200);
  CHECK(head.body.empty());
  CHECK(head.headers.at("content-length") == std::to_string(get.body.size()));
}

TEST_CASE("broken requests are dropped and others are served meanwhile") {
  const Served served(folder_of_jobs("broken"));
  for (const char* text :
       {"\r\n\r\n", "GET\r\n\r\n", "NONSENSE / HTTP/1.1\r\n\r\n", "GET / HTTP/9.9\r\n\r\n",
        "\x16\x03\x01\x02", "GET /%00 HTTP/1.1\r\n\r\n",
        "POST /api/jobs HTTP/1.1\r\nContent-Length: -5\r\n\r\n",
        "POST /api/jobs HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n"}) {
    const Connection connection(served.port());
    connection.send(text);
    CHECK(served.get("/api/about").status == 200);
  }
  const Connection long_headers(served.port());
  long_headers.send("GET / HTTP/1.1\r\nHost: " + std::string(100'000, 'x'));
  CHECK(long_headers.ends_within(5));
  const Connection long_body(served.port());
  long_body.send("POST /api/jobs HTTP/1.1\r\nHost: " + served.host() +
                 "\r\nContent-Length: 200000000\r\n\r\n");
  const Response refused = parse(long_body.receive(5, "\r\n\r\n"));
  CHECK(refused.status == 413);
  CHECK(served.get("/api/about").status == 200);
}

TEST_CASE("a request that stands still is ended") {
  const Served served(folder_of_jobs("slow"));
  const Connection slow(served.port());
  slow.send("GET / HTTP/1.1\r\nHost: ");
  CHECK(slow.ends_within(15));
}

TEST_CASE("a request that comes drop by drop is ended, be it the first or a later one") {
  const Served served(folder_of_jobs("drops"));
  const std::string head = "GET /api/about HTTP/1.1\r\nHost: " + served.host() +
                           "\r\nCookie: " + served.cookie() + "\r\n";
  const Connection first(served.port()), later(served.port()), patient(served.port());
  later.send(head + "\r\n");
  CHECK(parse(later.receive(5, "}")).status == 200);
  bool first_ended = false, later_ended = false;
  for (int seconds = 0; seconds < 30 && !(first_ended && later_ended); ++seconds) {
    first.send(seconds == 0 ? "GET / HTTP/1.1\r\nX: " : "x");
    later.send(seconds == 0 ? "POST /api/jobs HTTP/1.1\r\nX: " : "x");
    // One that asks again and again is served for as long as it likes.
    patient.send(head + "\r\n");
    CHECK(parse(patient.receive(2, "}")).status == 200);
    first_ended = first_ended || first.ends_within(0.5);
    later_ended = later_ended || later.ends_within(0.4);
  }
  CHECK(first_ended);
  CHECK(later_ended);
}

TEST_CASE("500 connections that say nothing do not keep the page from being served") {
  const Served served(folder_of_jobs("many"));
  std::vector<std::unique_ptr<Connection>> idle;
  for (int i = 0; i < 500; ++i) {
    idle.push_back(std::make_unique<Connection>(served.port()));
    REQUIRE(idle.back()->is_open());
  }
  CHECK(served.get("/api/about").status == 200);
}

TEST_CASE("a server short of descriptors pauses, and serves again when there are some") {
  const std::string folder = folder_of_jobs("descriptors");
  const Served served(folder, {}, 64);
  std::vector<std::unique_ptr<Connection>> idle;
  for (int i = 0; i < 100; ++i) {
    idle.push_back(std::make_unique<Connection>(served.port()));
    if (idle.back()->is_open()) idle.back()->send("GET / HTTP/1.1\r\n");
  }
  idle.clear();
  CHECK(within(10, [&] { return served.get("/api/jobs/one").status == 200; }));
  CHECK(served.get("/api/jobs/one/papers/cuts.pdf").status == 200);
}
