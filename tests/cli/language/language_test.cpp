#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/oracle/english.h"
#include "tests/oracle/program.h"

namespace {

const std::string letter =
    R"(<job version="1" unit="cm" reference="M-7"><customer name="Åsa Vik" email="asa@example.org"/>
    <title>Brief</title><layers><layer board="Oat"/></layers><borders all="5"/>
    <arrange><opening width="21.6" height="27.9"/></arrange></job>)";

std::string letter_job() {
  static const std::string path = [] {
    const std::string job = oracle::scratch_folder("letter") + "/job.xml";
    oracle::write_file(job, letter);
    return job;
  }();
  return path;
}

// The proof's words, as pdftotext reads them, of a program that runs in this environment.
std::string proof_words(std::vector<std::string> environment, std::vector<std::string> options) {
  const std::string pdf = oracle::scratch_folder("proof") + "/proof.pdf";
  std::vector<std::string> words{"env", "-u", "LC_ALL", "-u", "LC_MESSAGES", "-u", "LANG"};
  words.insert(words.end(), environment.begin(), environment.end());
  words.insert(words.end(), {MULLION_PROGRAM, "proof", letter_job(), "-o", pdf});
  words.insert(words.end(), options.begin(), options.end());
  const auto made = oracle::run(words);
  INFO(made.err);
  REQUIRE(made.status == 0);
  return oracle::run({"pdftotext", "-layout", pdf, "-"}).out;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a German proof has German labels and the decimal comma") {
  const std::string words = proof_words({}, {"--language", "de"});
  CHECK(has(words, "Ausschnitt 1"));
  CHECK(has(words, "21,6 \xC3\x97 27,9 cm"));
  CHECK_FALSE(has(words, "Opening"));
  CHECK_FALSE(has(words, "21.6"));
}

TEST_CASE("the environment's language is taken though its locale is not installed") {
  CHECK(has(proof_words({"LANG=de_DE.UTF-8"}, {}), "Ausschnitt 1"));
  CHECK(has(proof_words({"LANG=de_DE.UTF-8", "LC_MESSAGES=es_ES"}, {}), "Ventana 1"));
  CHECK(has(proof_words({"LANG=de", "LC_MESSAGES=es", "LC_ALL=fr_BE.UTF-8"}, {}),
            "Fen\xC3\xAAtre 1"));
  CHECK(has(proof_words({"LANG=de_DE", "LC_ALL="}, {}), "Ausschnitt 1"));
  CHECK(has(proof_words({"LANG=de_DE.UTF-8"}, {"--language", "fr"}), "Fen\xC3\xAAtre 1"));
}

TEST_CASE("an unknown language of the environment is English") {
  CHECK(has(proof_words({"LANG=xx_YY.UTF-8"}, {}), "Opening 1"));
  CHECK(has(proof_words({"LANG=C"}, {}), "Opening 1"));
  CHECK(has(proof_words({}, {}), "Opening 1"));
}

TEST_CASE("an unknown language that was asked for is refused, with those that are known") {
  const auto run = oracle::mullion({"proof", letter_job(), "-o", "/dev/null", "--language", "dk"});
  CHECK(run.status == 2);
  CHECK(has(run.err, "found \"dk\"; expected one of de, en, es, fr"));
}

TEST_CASE("one job in one language gives the same bytes in any environment") {
  const std::string folder = oracle::scratch_folder("same");
  for (const char* lang : {"C", "fr_FR.UTF-8"}) {
    const auto made =
        oracle::run({"env", std::string("LC_ALL=") + lang, MULLION_PROGRAM, "proof", letter_job(),
                     "-o", folder + "/" + lang + ".svg", "--language", "es"});
    REQUIRE(made.status == 0);
  }
  CHECK(oracle::read_file(folder + "/C.svg") == oracle::read_file(folder + "/fr_FR.UTF-8.svg"));
}

TEST_CASE("an American customer reads inches first and gets Letter paper") {
  const std::string words = proof_words({"LANG=en_US.UTF-8"}, {});
  CHECK(words.find("8 1/2 \xC3\x97 11 in") < words.find("21.6 \xC3\x97 27.9 cm"));
  const std::string pdf = oracle::scratch_folder("paper") + "/p.pdf";
  const auto size = [&](const char* language) {
    oracle::mullion({"proof", letter_job(), "-o", pdf, "--language", language});
    return oracle::run({"pdfinfo", pdf}).out;
  };
  CHECK(has(size("en-US"), "612 x 792 pts (letter)"));
  CHECK(has(size("de"), "(A4)"));
}

TEST_CASE("a French page says that it is French") {
  const std::string page = oracle::scratch_folder("page") + "/p.html";
  REQUIRE(oracle::mullion({"proof", letter_job(), "-o", page, "--language", "fr"}).status == 0);
  const std::string html = oracle::read_file(page);
  CHECK(has(html, "<html lang=\"fr\">"));
  CHECK(has(html, "Dimensions"));
  CHECK_FALSE(has(html, "Sizes"));
}

// Read by Python's email package, which decodes RFC 2047.
TEST_CASE("a mail in another language has its subject and words encoded") {
  const std::string folder = oracle::scratch_folder("mail");
  oracle::write_file(folder + "/shop.xml",
                     R"(<shop version="1" name="Marcos" email="taller@example.org"/>)");
  REQUIRE(oracle::mullion({"proof", letter_job(), "--mail", folder + "/m.eml", "--shop",
                           folder + "/shop.xml", "--language", "es"})
              .status == 0);
  const auto read = oracle::run(
      {"python3", "-c",
       "import email,email.policy,sys\n"
       "m=email.message_from_binary_file(open(sys.argv[1],'rb'),policy=email.policy.SMTP)\n"
       "out=m['subject']+'|'+m.get_body('plain').get_content()+'|'+m.get_body('html').get_content()"
       "\n"
       "sys.stdout.buffer.write(out.encode())",
       folder + "/m.eml"});
  const std::string bytes = oracle::read_file(folder + "/m.eml");
  CHECK(std::all_of(bytes.begin(), bytes.end(), [](unsigned char c) { return c < 0x80; }));
  CHECK(read.out.starts_with("Prueba M-7: Brief (revisi\xC3\xB3n 1)|"));
  CHECK(has(read.out, "el encuadre de cada imagen"));
  CHECK(has(read.out, "<html lang=\"es\">"));
}

TEST_CASE("an estimate is told in the language, its JSON in English") {
  const std::string prices = oracle::gallery("shop/prices.xml"),
                    job = oracle::gallery("double-mat.xml");
  const auto german = oracle::mullion({"estimate", job, "--prices", prices, "--language", "de"});
  CHECK(has(german.out, "Passepartoutkarton Chalk  40,64 \xC3\x97 35,56 cm"));
  CHECK(has(german.out, "12,60 EUR"));
  const auto json =
      oracle::mullion({"estimate", job, "--prices", prices, "--language", "de", "--json"});
  CHECK(has(json.out, "Mat board Chalk"));
  CHECK(has(json.out, "12.60 EUR"));
}

TEST_CASE("what changed is told in the language") {
  const std::string other = oracle::scratch_folder("diff") + "/job.xml";
  std::string wider = letter;
  wider.replace(wider.find("all=\"5\""), 7, "all=\"5.5\"");
  oracle::write_file(other, wider);
  const auto run = oracle::mullion({"diff", letter_job(), other, "--language", "de"});
  CHECK(has(run.out,
            "linker Rand: gr\xC3\xB6\xC3\x9F"
            "er, von 5 cm auf 5,5 cm\n"));
}

TEST_CASE("a new job is measured in millimetres where the territory is metric") {
  const auto unit_in = [](const std::string& lang) {
    const auto run =
        oracle::run({"env", "LC_ALL=" + lang, MULLION_PROGRAM, "new", "-", "--size", "10 x 8"});
    CHECK(run.status == 0);
    return has(run.out, "unit=\"mm\"") ? "mm" : has(run.out, "unit=\"in\"") ? "in" : "?";
  };
  CHECK(unit_in("de_DE.UTF-8") == std::string("mm"));
  CHECK(unit_in("en_US.UTF-8") == std::string("in"));
  CHECK(unit_in("C") == std::string("in"));
}

TEST_CASE("a template has its labels in the language, and none of them is cut short") {
  const std::string folder = oracle::scratch_folder("template"),
                    job = oracle::gallery("two-tiles.xml");
  const std::pair<const char*, const char*> marks[] = {{"de",
                                                        "KARTONR\xC3\x9C"
                                                        "CKSEITE"},
                                                       {"fr", "DOS DU CARTON"},
                                                       {"es", "DORSO DEL CART\xC3\x93N"}};
  for (const auto& [language, mark] : marks) {
    for (const std::vector<std::string>& how : {std::vector<std::string>{"--overlaid"},
                                                {"--paper", "a4", "--by-layer"},
                                                {"--paper", "letter", "--butt"},
                                                {"--corners"}}) {
      std::vector<std::string> command{"template",        job,          "-o",
                                       folder + "/t.pdf", "--language", language};
      command.insert(command.end(), how.begin(), how.end());
      REQUIRE(oracle::mullion(command).status == 0);
      const std::string words = oracle::run({"pdftotext", folder + "/t.pdf", "-"}).out;
      INFO(language << " " << how.front() << "\n" << words);
      CHECK(has(words, mark));
      // From the top mat's edge, and from the edge of the under-mat's blank, 3 mm smaller.
      const bool together = how.front() == "--overlaid" || how.back() == "--butt";
      CHECK(has(words, together ? "63" : "60"));
      CHECK_FALSE(has(words, "\xE2\x80\xA6"));  // an ellipsis
      CHECK_FALSE(has(words, "Layer"));
    }
  }
}

TEST_CASE("what a template says of V-grooves is told in the language, and not cut short") {
  const std::string folder = oracle::scratch_folder("grooved-template");
  for (const auto& [language, mark] : {std::pair("en", "V-groove (dimensions"),
                                       {"de", "V-Nut (Ma"},
                                       {"fr", "Rainure en V (cotes"},
                                       {"es", "Ranura en V (cotas"}}) {
    for (const char* paper : {"board", "letter", "a4"}) {
      for (const char* name : {"engraved-house", "abbey-arches"}) {
        const std::string job = oracle::gallery(std::string(name) + ".xml");
        REQUIRE(oracle::mullion({"template", job, "-o", folder + "/t.pdf", "--paper", paper,
                                 "--language", language})
                    .status == 0);
        const std::string words = oracle::run({"pdftotext", folder + "/t.pdf", "-"}).out;
        INFO(language << " on " << paper << "\n" << words);
        CHECK(has(words, mark));
        CHECK_FALSE(has(words, "\xE2\x80\xA6"));
      }
    }
  }
}

TEST_CASE("a page for calibration is told in the language") {
  const std::string pdf = oracle::scratch_folder("calibration") + "/c.pdf";
  REQUIRE(oracle::mullion({"printer", "-o", pdf, "--unit", "mm", "--language", "es"}).status == 0);
  const std::string words = oracle::run({"pdftotext", "-layout", pdf, "-"}).out;
  CHECK(has(words, "Calibrado de la impresora"));
  CHECK(has(words, "dibujado: 170,0 mm"));
}

TEST_CASE("cut sheets, sheets of runs and test cuts are told in the language, JSON and text not") {
  const std::string folder = oracle::scratch_folder("cuts"),
                    job = oracle::gallery("double-mat.xml"),
                    other = oracle::gallery("two-tiles.xml");
  const auto words = [&](std::vector<std::string> command) {
    command.insert(command.end(), {"-o", folder + "/c.pdf", "--language", "de"});
    REQUIRE(oracle::mullion(command).status == 0);
    return oracle::run({"pdftotext", "-layout", folder + "/c.pdf", "-"}).out;
  };
  const std::string plan = words({"cuts", job});
  CHECK(has(plan, "Schnittplan W-0103: Boat, two sails"));
  CHECK(has(plan, "Kante A von Ihnen weg legen"));
  CHECK(has(plan, "Vierteldrehung links"));
  CHECK(has(plan, "Stopp nah bleibt 2 13/16 Zoll"));
  CHECK_FALSE(has(plan, "stays"));
  CHECK(has(words({"cuts", job, other}), "Serie: 2 Passepartouts, 2 Sorten"));
  CHECK(
      has(words({"cutter", "check", "metric-bench"}), "Reststück 300 mm im Quadrat, 1,5 mm stark"));
  for (const char* ending : {"/c.json", "/c.txt"}) {
    REQUIRE(oracle::mullion({"cuts", job, "-o", folder + ending, "--language", "de"}).status == 0);
    CHECK_FALSE(has(oracle::read_file(folder + ending), "Zoll"));
  }
}

TEST_CASE("sheet plans and labels are told in the language") {
  const std::string folder = oracle::scratch_folder("sheets"),
                    job = oracle::gallery("double-mat.xml");
  REQUIRE(oracle::mullion({"sheets", job + "*6", "-o", folder + "/s.pdf", "--labels",
                           folder + "/l.pdf", "--label-sheet", "a4-24", "--language", "fr"})
              .status == 0);
  const auto words = [&](const char* file) {
    return oracle::run({"pdftotext", "-layout", folder + file, "-"}).out;
  };
  const std::string plan = words("/s.pdf"), labels = words("/l.pdf");
  CHECK(has(plan,
            "R\xC3\xA9"
            "capitulatif"));
  CHECK(has(plan, "Feuille 1 sur 2"));
  CHECK(has(plan, "16 \xC3\x97 14 po"));
  CHECK_FALSE(has(plan, "\xE2\x80\xA6"));  // an ellipsis
  CHECK(has(labels, "1 sur 6, feuille 1"));
}

TEST_CASE("the run sheet of a sheet plan carries no English, notes of the cutting plan included") {
  const std::string folder = oracle::scratch_folder("runs");
  const std::vector<std::string> jobs{oracle::gallery("triple-mat.xml"),
                                      oracle::gallery("herbarium.xml"),
                                      oracle::gallery("seven-picture-collage.xml")};
  for (const char* language : {"en", "de", "es", "fr"}) {
    std::vector<std::string> command{
        "sheets",     "-o",    folder + "/s.json", "--run-sheet", folder + "/r.pdf",
        "--language", language};
    command.insert(command.end(), jobs.begin(), jobs.end());
    REQUIRE(oracle::mullion(command).status == 0);
    const std::string words = oracle::run({"pdftotext", folder + "/r.pdf", "-"}).out;
    INFO(language << "\n" << words);
    CHECK(oracle::english_in(words).empty() == (language != std::string("en")));
  }
}
