#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

namespace {

std::string job(const std::string& customer, const std::string& title, const std::string& email) {
  return R"(<job version="1" unit="in" reference="M-7" revision="3" date="2026-03-02"><customer name=")" +
         customer + "\" email=\"" + email + "\"/><title>" + title +
         R"(</title><layers><layer board="Oat"/></layers><borders all="3"/>
    <arrange><opening width="4" height="5"/></arrange></job>)";
}

struct Draft {
  int status = 0;
  std::string err, path, folder;
};

Draft draft(const std::string& name, const std::string& xml) {
  Draft out;
  out.folder = oracle::scratch_folder("mail-" + name);
  oracle::write_file(out.folder + "/job.xml", xml);
  oracle::write_file(out.folder + "/shop.xml",
                     R"(<shop version="1" name="Bjørk &amp; Søn" email="bench@example.org"/>)");
  out.path = out.folder + "/out.eml";
  const auto run = oracle::mullion({"proof", out.folder + "/job.xml", "-o", out.folder + "/p.pdf",
                                    "--mail", out.path, "--shop", out.folder + "/shop.xml"});
  out.status = run.status;
  out.err = run.err;
  return out;
}

// What Python's email package, a parser that we did not write, says of the file.
std::string parsed(const std::string& path, const std::string& expression) {
  const auto run = oracle::run(
      {"python3", "-c",
       "import email,email.policy,sys\n"
       "m=email.message_from_binary_file(open(sys.argv[1],'rb'),policy=email.policy.SMTP)\n"
       "parts=list(m.walk())\n"
       "sys.stdout.buffer.write(str(" +
           expression + ").encode())",
       path});
  INFO(run.err);
  REQUIRE(run.status == 0);
  return run.out;
}

TEST_CASE("a mail has text, HTML with its picture, and the PDF") {
  const Draft mail = draft("whole", job("Ines Halloway", "Boat", "ines@example.org"));
  INFO(mail.err);
  REQUIRE(mail.status == 0);
  CHECK(parsed(mail.path, "' '.join(p.get_content_type() for p in parts)") ==
        "multipart/mixed multipart/alternative text/plain multipart/related text/html image/png "
        "application/pdf");
  CHECK(parsed(mail.path, "[p.defects for p in parts if p.defects]") == "[]");
  CHECK(parsed(mail.path,
               "parts[6].get_content_disposition()+' '+parts[5].get_content_disposition()") ==
        "attachment inline");
  CHECK(parsed(mail.path, "'cid:'+parts[5]['Content-ID'][1:-1] in parts[4].get_content()") ==
        "True");
  CHECK(parsed(mail.path, "parts[5].get_content()[:4]") == "b'\\x89PNG'");
  CHECK(parsed(mail.path,
               "parts[6].get_content()==open('" + mail.folder + "/p.pdf','rb').read()") == "True");
  CHECK(parsed(mail.path, "m['To'].addresses[0].addr_spec+' '+m['From'].addresses[0].addr_spec") ==
        "ines@example.org bench@example.org");
  CHECK(parsed(mail.path, "m['Date'].datetime.date()") == "2026-03-02");
  CHECK(parsed(mail.path, "m['MIME-Version']") == "1.0");
  CHECK(parsed(mail.path,
               "max(len(l) for l in open(sys.argv[1],'rb').read().split(b'\\r\\n'))<=998") ==
        "True");
  CHECK(parsed(mail.path, "open(sys.argv[1],'rb').read().replace(b'\\r\\n',b'').count(b'\\n')") ==
        "0");
}

TEST_CASE("names of any script come through a mail's header") {
  const Draft mail = draft("names", job("Żaneta Łąka 山田", "Été à la mer", "z@example.org"));
  REQUIRE(mail.status == 0);
  CHECK(parsed(mail.path, "m['To'].addresses[0].display_name") == "Żaneta Łąka 山田");
  CHECK(parsed(mail.path, "'Été à la mer' in m['Subject']") == "True");
  CHECK(parsed(mail.path,
               "'Żaneta' in parts[2].get_content() and 'Żaneta' in parts[4].get_content()") ==
        "True");
  CHECK(parsed(mail.path, "all(b<128 for b in open(sys.argv[1],'rb').read())") == "True");
}

TEST_CASE("nothing in a job adds a header to its mail") {
  const Draft mail = draft(
      "inject", job("Eve&#13;&#10;Bcc: all@example.org", "A&#10;X-Bad: yes", "eve@example.org"));
  REQUIRE(mail.status == 0);
  CHECK(parsed(mail.path, "m['Bcc']") == "None");
  CHECK(parsed(mail.path, "m['X-Bad']") == "None");
  CHECK(parsed(mail.path, "len(m['To'].addresses)") == "1");
  for (const char* address : {"a@b.org&gt;,&lt;c@d.org", "a@b.org,c", "x&quot;@b.org"}) {
    const Draft refused = draft("address", job("Eve", "A", address));
    CHECK(refused.status == 1);
    CHECK(refused.err.find("expected") != std::string::npos);
  }
}

TEST_CASE("the same job gives the same mail") {
  const std::string xml = job("Ines", "Boat", "ines@example.org");
  const std::string first = oracle::read_file(draft("same", xml).path);
  CHECK(oracle::read_file(draft("same", xml).path) == first);
}

TEST_CASE("a mail without a sender is not written") {
  const std::string folder = oracle::scratch_folder("mail-nobody");
  const auto run =
      oracle::mullion({"proof", oracle::gallery("double-mat.xml"), "--mail", folder + "/out.eml"});
  CHECK(run.status == 1);
  CHECK(run.err.find("a mail needs a sender") != std::string::npos);
}

}  // namespace
