#include "tests/cli/page/client.h"

#include <arpa/inet.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "tests/oracle/program.h"

namespace page_test {
namespace {

namespace fs = std::filesystem;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

std::string unchunked(const std::string& body) {
  std::string out;
  std::size_t at = 0;
  while (at < body.size()) {
    const std::size_t line = body.find("\r\n", at);
    if (line == std::string::npos) break;
    const std::size_t size = std::stoul(body.substr(at, line - at), nullptr, 16);
    if (size == 0) break;
    out += body.substr(line + 2, size);
    at = line + 2 + size + 2;
  }
  return out;
}

[[noreturn]] void become(const std::vector<std::string>& words, const std::string& out,
                         int most_descriptors) {
  if (most_descriptors > 0) {
    const rlimit limit{static_cast<rlim_t>(most_descriptors),
                       static_cast<rlim_t>(most_descriptors)};
    ::setrlimit(RLIMIT_NOFILE, &limit);
  }
  ::dup2(::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644), STDOUT_FILENO);
  ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
  for (int i = 3; i < 256; ++i) ::close(i);
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  ::execv(arguments[0], arguments.data());
  ::_exit(127);
}

}  // namespace

Response parse(const std::string& bytes, bool has_body) {
  Response out;
  const std::size_t end = bytes.find("\r\n\r\n");
  if (bytes.rfind("HTTP/1.1 ", 0) != 0 || end == std::string::npos) return out;
  out.status = std::stoi(bytes.substr(9, 3));
  std::size_t at = bytes.find("\r\n") + 2;
  while (at < end + 2) {
    const std::size_t line = bytes.find("\r\n", at), colon = bytes.find(": ", at);
    out.headers[lower(bytes.substr(at, colon - at))] = bytes.substr(colon + 2, line - colon - 2);
    at = line + 2;
  }
  out.body = bytes.substr(end + 4);
  if (has_body && out.headers["transfer-encoding"] == "chunked") out.body = unchunked(out.body);
  return out;
}

Connection::Connection(int port) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  socket_ = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  if (::connect(socket_, reinterpret_cast<sockaddr*>(&address), sizeof address) == 0) return;
  ::close(socket_);
  socket_ = -1;
}

Connection::~Connection() {
  if (socket_ >= 0) ::close(socket_);
}

void Connection::send(const std::string& bytes) const {
  std::size_t sent = 0;
  while (sent < bytes.size()) {
    const ssize_t wrote = ::send(socket_, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
    if (wrote <= 0) return;
    sent += static_cast<std::size_t>(wrote);
  }
}

std::string Connection::receive(double seconds, const std::string& until) const {
  std::string out;
  const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
  char buffer[65536];
  while (std::chrono::steady_clock::now() < end) {
    pollfd one{socket_, POLLIN, 0};
    if (::poll(&one, 1, 50) <= 0) continue;
    const ssize_t got = ::recv(socket_, buffer, sizeof buffer, 0);
    if (got <= 0) break;
    out.append(buffer, static_cast<std::size_t>(got));
    if (!until.empty() && out.find(until) != std::string::npos) break;
  }
  return out;
}

bool Connection::ends_within(double seconds) const {
  const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
  char buffer[4096];
  while (std::chrono::steady_clock::now() < end) {
    pollfd one{socket_, POLLIN, 0};
    if (::poll(&one, 1, 50) <= 0) continue;
    if (::recv(socket_, buffer, sizeof buffer, 0) <= 0) return true;
  }
  return false;
}

Served::Served(const std::string& what, std::vector<std::string> words, int most_descriptors)
    : out_(oracle::scratch_folder("page-said") + "/" + std::to_string(::getpid()) + "-" +
           fs::path(what).filename().string() + ".txt") {
  words.insert(words.begin(), {MULLION_PROGRAM, "open", what, "--no-browser"});
  child_ = ::fork();
  if (child_ == 0) become(words, out_, most_descriptors);
  if (!within(20, [this] { return said().find("Ctrl-C ends\n") != std::string::npos; })) {
    throw std::runtime_error("no address: " + said());
  }
  const std::string text = said();
  const std::size_t colon = text.find(':', 7), key = text.find("key=");
  port_ = std::stoi(text.substr(colon + 1));
  key_ = text.substr(key + 4, 32);
  const Response first = ask("GET", "/?key=" + key_, {{"Host", host()}});
  const std::string set = first.headers.at("set-cookie");
  cookie_ = set.substr(0, set.find(';'));
}

Served::~Served() {
  if (child_ > 0) end(SIGKILL);
}

std::string Served::said() const {
  return fs::exists(out_) ? oracle::read_file(out_) : std::string();
}

int Served::end(int signal) {
  ::kill(child_, signal);
  int status = 0;
  ::waitpid(child_, &status, 0);
  child_ = -1;
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

std::size_t Served::memory() const {
  std::ifstream status("/proc/" + std::to_string(child_) + "/status");
  for (std::string line; std::getline(status, line);) {
    if (line.rfind("VmRSS:", 0) == 0) return std::stoul(line.substr(6)) * 1024;
  }
  return 0;
}

Response Served::ask(const std::string& method, const std::string& path, const Headers& headers,
                     const std::string& body) const {
  const Connection connection(port_);
  std::string text = method + " " + path + " HTTP/1.1\r\nConnection: close\r\n";
  for (const auto& [name, value] : headers) text += name + ": " + value + "\r\n";
  if (!body.empty() || method == "POST") {
    text += "Content-Length: " + std::to_string(body.size()) + "\r\n";
  }
  connection.send(text + "\r\n" + body);
  return parse(connection.receive(30), method != "HEAD");
}

Response Served::get(const std::string& path) const {
  return ask("GET", path, {{"Host", host()}, {"Cookie", cookie_}});
}

Response Served::post(const std::string& path, const std::string& body) const {
  return ask("POST", path, {{"Host", host()}, {"Cookie", cookie_}, {"Origin", "http://" + host()}},
             body);
}

std::string job_text(const std::string& title) {
  return "<job version=\"1\" reference=\"W-1\" unit=\"in\" increment=\"1/16\"><title>" + title +
         "</title>\n"
         "<pictures><picture id=\"p\" width=\"10\" height=\"8\" "
         "image=\"pictures/p.png\"/></pictures>\n"
         "<layers><layer name=\"Top mat\" board=\"Oat\" colour=\"#ece5d4\" ply=\"4\"/></layers>\n"
         "<borders all=\"3\"/>\n<arrange><opening picture=\"p\"/></arrange></job>\n";
}

std::string folder_of_jobs(const std::string& name) {
  const std::string folder = oracle::scratch_folder(name);
  for (const char* below : {"/pictures", "/sub", "/sub/pictures"}) {
    fs::create_directory(folder + below);
  }
  for (const char* below : {"/pictures", "/sub/pictures"}) {
    fs::copy_file(oracle::gallery("pictures/boat.png"), folder + below + "/p.png");
  }
  oracle::write_file(folder + "/one.xml", job_text("First"));
  oracle::write_file(folder + "/sub/two.xml", job_text("Second"));
  return folder;
}

}  // namespace page_test
