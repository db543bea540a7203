#include "engine/locale/locale.h"

#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const Scale sixteenths{Unit::inch, sixty_fourths(4)};
const Scale whole_millimetres{Unit::centimetre, millimetres(1)};

}  // namespace

TEST_CASE("a locale is found by its POSIX name and by its language tag") {
  CHECK(Locale::find("de_AT.UTF-8@euro")->tag() == "de-AT");
  CHECK(Locale::find("es-MX")->tag() == "es-MX");
  CHECK(Locale::find("fr")->tag() == "fr");
  CHECK(Locale::find("C.UTF-8")->tag() == "en");
  CHECK_FALSE(Locale::find("it"));
  CHECK_FALSE(Locale::find("de_"));
  CHECK_FALSE(Locale::find("de_AT_x"));
  CHECK_FALSE(Locale::find(""));
}

TEST_CASE("the languages are English and those that have a catalogue") {
  CHECK(Locale::languages() == std::vector<std::string_view>{"de", "en", "es", "fr"});
}

TEST_CASE("a message is said in the language, and in English where it is not translated") {
  CHECK(Locale::find("de")->say("Moulding, %1 wide", "2 cm") == "Leiste, 2 cm breit");
  const char* unknown = "no catalogue holds this";
  CHECK(Locale::find("de")->say(unknown) == unknown);
  CHECK(Locale().say("Moulding, %1 wide", "2 cm") == "Moulding, 2 cm wide");
}

TEST_CASE("arguments are put in once, in any order, whatever they hold") {
  const Locale english;
  CHECK(english.say("%2 before %1, 100 % of %1", "%2", 7) == "7 before %2, 100 % of %2");
  CHECK(english.say("%3 stays", "a") == "%3 stays");
}

TEST_CASE("a number takes the plural of its language: none is singular in French alone") {
  const auto layers = [](const char* language, int n) {
    return Locale::find(language)->plural(n, "%1 layer", "%1 layers");
  };
  CHECK(layers("en", 0) == "0 layers");
  CHECK(layers("en", 1) == "1 layer");
  CHECK(layers("de", 0) == "0 Lagen");
  CHECK(layers("de", 1) == "1 Lage");
  CHECK(layers("fr", 0) == "0 niveau");
  CHECK(layers("fr", 2) == "2 niveaux");
  CHECK(layers("es", 2) == "2 capas");
}

// Python's gettext module reads the catalogue that msgfmt compiles and evaluates its header's rule.
TEST_CASE("every number takes the plural form that another reader of the catalogue gives it") {
  const std::string folder = oracle::scratch_folder("plural");
  for (const std::string_view language : Locale::languages()) {
    if (language == "en") continue;
    INFO(language);
    const std::string name = folder + "/" + std::string(language);
    REQUIRE(oracle::run({"msgfmt", "-o", name + ".mo",
                         std::string(MULLION_SOURCE) + "/engine/locale/translations/" +
                             std::string(language) + ".po"})
                .status == 0);
    const auto told =
        oracle::run({"python3", "-c",
                     "import gettext, sys\n"
                     "words = gettext.GNUTranslations(open(sys.argv[1], 'rb'))\n"
                     "for n in range(300):\n"
                     "  text = words.ngettext('%1 layer', '%1 layers', n).replace('%1', str(n))\n"
                     "  sys.stdout.buffer.write((text + '\\n').encode())\n",
                     name + ".mo"});
    INFO(told.err);
    REQUIRE(told.status == 0);
    std::string ours;
    for (int n = 0; n < 300; ++n) {
      ours += Locale::find(language)->plural(n, "%1 layer", "%1 layers") + "\n";
    }
    CHECK(ours == told.out);
  }
}

TEST_CASE("lengths have the decimal mark and the units of the language") {
  const Locale german = *Locale::find("de");
  CHECK(german.length(millimetres(216), whole_millimetres) == "21,6 cm");
  CHECK(german.length(inches(8) + sixty_fourths(32), sixteenths) == "8 1/2 Zoll");
  CHECK(german.size(millimetres(216), millimetres(279), whole_millimetres) ==
        "21,6 \xC3\x97 27,9 cm");
  CHECK(german.exact_length(-millimetres(5), Unit::centimetre) == "-0,5 cm");
  CHECK(Locale::find("es_MX")->length(millimetres(216), whole_millimetres) == "21.6 cm");
  CHECK(Locale().length(millimetres(216), whole_millimetres) == "21.6 cm");
}

TEST_CASE("every length drawn in German is read back with its comma") {
  const Locale german = *Locale::find("de");
  const Scale tenths{Unit::millimetre, Length::from_ticks(160)};
  for (int i = 0; i < 500; ++i) {
    const Length length = tenths.increment * (37 * i);
    std::string text = german.length_number(length, tenths);
    const std::size_t comma = text.find(',');
    CHECK(text.find('.') == std::string::npos);
    if (comma != std::string::npos) text[comma] = '.';
    CHECK(parse_length(text, Unit::millimetre) == length);
  }
}

TEST_CASE("a customer reads first the unit of the territory, else the job's") {
  const auto first = [](const char* name, const Scale& job) {
    return Locale::find(name)->first_scale(job);
  };
  CHECK(first("de", sixteenths) == whole_millimetres);
  CHECK(first("en_AU", sixteenths) == whole_millimetres);
  CHECK(first("en_US", whole_millimetres) == sixteenths);
  CHECK(first("es_US", whole_millimetres) == sixteenths);
  for (const char* either : {"en", "C", "en_GB", "fr_CA"}) {
    CHECK(first(either, sixteenths) == sixteenths);
    CHECK(first(either, whole_millimetres) == whole_millimetres);
  }
}

TEST_CASE("paper is that of the territory; without one, in English, that of the job's unit") {
  CHECK(Locale().letter_paper(Unit::inch));
  CHECK_FALSE(Locale().letter_paper(Unit::millimetre));
  CHECK_FALSE(Locale::find("de")->letter_paper(Unit::inch));
  CHECK(Locale::find("es_MX")->letter_paper(Unit::millimetre));
  CHECK_FALSE(Locale::find("en_GB")->letter_paper(Unit::inch));
}

TEST_CASE("a catalogue whose tables point beyond its bytes is refused") {
  CHECK_THROWS_AS(Catalogue("nothing of the kind"), std::out_of_range);
  CHECK_THROWS_AS(Catalogue(""), std::out_of_range);
  std::string mo(28, '\0');
  mo.replace(0, 4, "\xde\x12\x04\x95");
  mo[8] = 9;             // messages
  mo[12] = mo[16] = 28;  // beyond the end
  CHECK_THROWS_AS(Catalogue(mo).find("Total"), std::out_of_range);
}
