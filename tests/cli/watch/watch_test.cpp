// `mullion watch`: its page is asked by Python's urllib and by Chromium.

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <thread>

#include "tests/oracle/program.h"

namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;

template <class Condition>
bool within_20_s(const Condition& condition) {
  for (int look = 0; look < 200; ++look) {
    if (condition()) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
  }
  return false;
}

// A watch of a job in a folder of its own, from its start until it is told to end.
class Watched {
 public:
  explicit Watched(const std::string& name, std::vector<std::string> options = {})
      : folder_(oracle::scratch_folder(name)), job_(folder_ + "/job.xml") {
    save_title("First");
    fs::create_directory(folder_ + "/tmp");
    oracle::write_file(folder_ + "/said.txt", "");
    options.insert(options.begin(), {MULLION_PROGRAM, "watch", job_});
    child_ = ::fork();
    if (child_ == 0) run(options);
    if (!within_20_s([&] { return said().find("save 1") != std::string::npos; })) {
      FAIL("nothing was made: " + said());
    }
  }
  ~Watched() {
    if (child_ > 0) end(SIGKILL);
  }

  void save(const std::string& text) const {
    oracle::write_file(job_ + ".new", text);
    fs::rename(job_ + ".new", job_);
  }
  void save_title(const std::string& title) const { save(job_titled(title)); }

  static std::string job_titled(const std::string& title) {
    return "<job version=\"1\" reference=\"W-1\" unit=\"in\" increment=\"1/16\"><title>" + title +
           "</title>\n"
           "<pictures><picture id=\"p\" width=\"10\" height=\"8\"/></pictures>\n"
           "<layers><layer name=\"Top mat\" board=\"Oat\" colour=\"#ece5d4\" ply=\"4\"/></layers>\n"
           "<borders all=\"3\"/>\n<arrange><opening picture=\"p\"/></arrange></job>\n";
  }

  std::string said() const { return oracle::read_file(folder_ + "/said.txt"); }
  const std::string& folder() const { return folder_; }
  const std::string& job() const { return job_; }

  std::string url() const {
    const std::string text = said();
    return text.substr(0, text.find(' '));
  }

  // The status, then the body.
  std::pair<int, std::string> get(const std::string& path, const std::string& host = "",
                                  const std::string& method = "GET") const {
    const std::string script =
        "import sys, http.client\n"
        "at, path, host, method = sys.argv[1:]\n"
        "c = http.client.HTTPConnection(at, timeout=10)\n"
        "c.putrequest(method, path, skip_host=True)\n"
        "c.putheader('Host', host or at); c.endheaders()\n"
        "r = c.getresponse(); print(r.status); sys.stdout.flush()\n"
        "sys.stdout.buffer.write(r.read())\n";
    const std::string at = url().substr(7, url().size() - 8);
    const oracle::Run run = oracle::run({"python3", "-c", script, at, path, host, method});
    INFO(run.err);
    REQUIRE(run.status == 0);
    return {std::stoi(run.out), run.out.substr(run.out.find('\n') + 1)};
  }

  Json state() const { return Json::parse(get("/state").second); }

  bool reaches(int version) const {
    return within_20_s([&] { return state().at("version") >= version; });
  }

  int end(int signal) {
    ::kill(child_, signal);
    int status = 0;
    ::waitpid(child_, &status, 0);
    child_ = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  }

 private:
  [[noreturn]] void run(const std::vector<std::string>& words) const {
    ::setenv("TMPDIR", (folder_ + "/tmp").c_str(), 1);
    const int out = ::open((folder_ + "/said.txt").c_str(), O_WRONLY | O_CREAT, 0644);
    ::dup2(out, STDOUT_FILENO);
    ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
    std::vector<char*> arguments;
    for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    ::execv(arguments[0], arguments.data());
    ::_exit(127);
  }

  std::string folder_, job_;
  pid_t child_ = -1;
};

}  // namespace

TEST_CASE("a save makes every output anew, and a wrong job leaves the older ones") {
  Watched watched("watch");
  CHECK(watched.get("/proof.html").second.find("First") != std::string::npos);
  for (const char* pdf : {"/proof.pdf", "/template.pdf", "/cuts.pdf"}) {
    CHECK(watched.get(pdf).second.rfind("%PDF-", 0) == 0);
  }
  watched.save_title("Second");
  REQUIRE(watched.reaches(2));
  CHECK(watched.get("/proof.html").second.find("Second") != std::string::npos);
  CHECK(watched.state().at("failed").empty());

  watched.save("<job version=\"1\"><pictrues/></job>");
  REQUIRE(watched.reaches(3));
  const Json wrong = watched.state();
  CHECK(wrong.at("failed").size() == 4);
  CHECK(wrong.at("problems").get<std::string>().find("did you mean \"pictures\"?") !=
        std::string::npos);
  CHECK(watched.get("/proof.html").second.find("Second") != std::string::npos);

  watched.save_title("Third");
  REQUIRE(watched.reaches(4));
  CHECK(watched.state().at("failed").empty());
  CHECK(watched.end(SIGINT) == 0);
  CHECK(fs::is_empty(watched.folder() + "/tmp"));
}

TEST_CASE("a picture that is saved makes the proof anew too") {
  Watched watched("watch-picture");
  fs::create_directory(watched.folder() + "/pictures");
  const std::string picture = watched.folder() + "/pictures/p.png";
  fs::copy_file(oracle::gallery("pictures/boat.png"), picture);
  std::string job = Watched::job_titled("Boat");
  job.replace(job.find("id=\"p\""), 6, "id=\"p\" image=\"pictures/p.png\"");
  watched.save(job);
  REQUIRE(watched.reaches(2));
  const std::string before = watched.get("/proof.html").second;
  fs::copy_file(oracle::gallery("pictures/dune.png"), picture,
                fs::copy_options::overwrite_existing);
  REQUIRE(watched.reaches(3));
  CHECK(watched.get("/proof.html").second != before);
}

TEST_CASE("the page is for this machine and its own outputs alone") {
  const Watched watched("watch-local");
  CHECK(watched.get("/").first == 200);
  CHECK(watched.get("/", "attacker.example").first == 403);
  CHECK(watched.get("/state", "127.0.0.1:1").first == 403);
  CHECK(watched.get("/", "", "POST").first == 501);
  for (const char* path : {"/job.xml", "/../job.xml", "/%2e%2e/job.xml", "/proof.pdf/..", "//"}) {
    INFO(path);
    CHECK(watched.get(path).first == 404);
  }
  const std::string at = watched.url();
  const std::string port = at.substr(at.rfind(':') + 1, at.size() - at.rfind(':') - 2);
  const oracle::Run elsewhere = oracle::run(
      {"python3", "-c",
       "import socket, sys; socket.create_connection(('127.0.0.2', int(sys.argv[1])), 5)", port});
  CHECK(elsewhere.err.find("ConnectionRefusedError") != std::string::npos);
}

TEST_CASE("outputs stay in the folder that was asked for, in the language that was asked for") {
  const std::string into = oracle::scratch_folder("watch-into") + "/made/here";
  Watched watched("watch-kept", {"--into", into, "--language", "de"});
  CHECK(watched.end(SIGTERM) == 0);
  for (const char* name : {"proof.html", "proof.pdf", "template.pdf", "cuts.pdf"}) {
    CHECK(fs::file_size(into + "/" + name) > 1000);
  }
  CHECK(oracle::read_file(into + "/proof.html").find("lang=\"de\"") != std::string::npos);
}

TEST_CASE("the page in a browser shows the new save by itself") {
  const Watched watched("watch-page");
  oracle::write_file(watched.folder() + "/next.xml", Watched::job_titled("Second"));
  const oracle::Run run = oracle::run(
      {"timeout", "90", "python3", MULLION_SOURCE "/tests/cli/watch/drive_page.py", watched.url(),
       oracle::scratch_folder("watch-browser"), "state", "Up to date, save 1",
       "mv " + watched.folder() + "/next.xml " + watched.job(), "Up to date, save 2"});
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.out == watched.url() + "proof.html?2\n");
}

TEST_CASE("a watch of a job that is not there, or on a port in use, ends at once") {
  const oracle::Run none = oracle::mullion({"watch", "no-such-job.xml"});
  CHECK(none.status == 3);
  CHECK(none.err.find("found no file no-such-job.xml") != std::string::npos);
  const Watched watched("watch-port");
  const std::string at = watched.url();
  const std::string port = at.substr(at.rfind(':') + 1, at.size() - at.rfind(':') - 2);
  const oracle::Run second = oracle::mullion({"watch", watched.job(), "--port", port});
  CHECK(second.status == 3);
  CHECK(second.err.find("cannot listen on port " + port) != std::string::npos);
}
