#include <catch2/catch.hpp>
#include <regex>

#include "render/proof/tone.h"
#include "tests/oracle/program.h"
#include "tests/render/proof/chromium.h"

namespace {

using mullion::Colour;

std::string page_of(const std::vector<std::string>& jobs, const std::string& folder) {
  std::vector<std::string> words{"proof"};
  words.insert(words.end(), jobs.begin(), jobs.end());
  words.insert(words.end(), {"-o", folder + "/p.html"});
  const auto run = oracle::mullion(words);
  INFO(run.err);
  REQUIRE(run.status == 0);
  return oracle::read_file(folder + "/p.html");
}

// Adds a script before the page's own and one after it; what the last one calls `result` comes
// back. The page is loaded once, so that a test asks all its questions in one script.
std::string result_of(const std::string& html, const std::string& script,
                      const std::string& folder) {
  std::string driven = html;
  driven.insert(driven.find("<style>"),
                "<script>var faults=[];addEventListener('error',function(e){faults.push(e.message)"
                "});addEventListener('securitypolicyviolation',function(e){faults.push(e."
                "blockedURI)});</script>");
  driven.insert(driven.find("</body>"),
                "<script>var result;" + script +
                    ";document.body.setAttribute('data-result',result+'|faults:'+faults.join());"
                    "</script>");
  oracle::write_file(folder + "/driven.html", driven);
  const std::string dom = browser::dom_after_scripts(folder + "/driven.html");
  std::smatch found;
  REQUIRE(std::regex_search(dom, found, std::regex("data-result=\"([^\"]*)\"")));
  return found[1];
}

TEST_CASE("the page asks for nothing outside itself") {
  const std::string html =
      page_of({oracle::gallery("seven-picture-collage.xml")}, oracle::scratch_folder("page-alone"));
  const std::regex reference("(?:src|href)=\"(?!data:|#)");
  CHECK_FALSE(std::regex_search(html, reference));
  CHECK(html.find("@import") == std::string::npos);
  CHECK(html.size() < 5'000'000);
}

TEST_CASE("layers and choices go on and off, and openings tell their sizes") {
  const std::string folder = oracle::scratch_folder("page-driven");
  const std::string html =
      page_of({oracle::gallery("double-mat.xml"), oracle::gallery("equal-borders.xml")}, folder);
  const std::string told = result_of(
      html,
      "var box=document.querySelector('[data-shows=layer-2]');box.click();"
      "var layer=document.querySelector('[data-part=layer-2]');"
      "result=getComputedStyle(layer).display;box.click();"
      "result+=' '+getComputedStyle(layer).display;"
      "document.querySelector('[data-shows=choice-B]').click();"
      "result+=' '+document.querySelector('[data-part=choice-B]').hidden;"
      "var one=document.querySelector('.opening');one.focus();"
      // A window without a screen has the focus or not, and tells of it only where it has.
      "if(!document.hasFocus()){one.dispatchEvent(new FocusEvent('focus'));"
      "one.dispatchEvent(new FocusEvent('focusin',{bubbles:true}))}"
      "result+=' '+(document.getElementById('told').textContent.indexOf('Opening 1: ')===0);"
      "var zoom=document.getElementById('zoom-now');"
      "document.querySelector('.stage').dispatchEvent(new KeyboardEvent('keydown',{key:'+'}));"
      "result+=' '+zoom.textContent;"
      // WCAG 2.2, 2.1.4: such keys work only while a part of the page has the focus.
      "document.body.dispatchEvent(new KeyboardEvent('keydown',{key:'+',bubbles:true}));"
      "result+=' '+zoom.textContent",
      folder);
  CHECK(told == "none inline true true 125 % 125 %|faults:");
}

TEST_CASE("every control has a name, and every opening can be reached by keyboard") {
  const std::string folder = oracle::scratch_folder("page-names");
  const std::string html = page_of({oracle::gallery("seven-picture-collage.xml")}, folder);
  CHECK(result_of(html,
                  "var named=0,all=0;document.querySelectorAll('button,input,.opening').forEach("
                  "function(e){all++;if((e.getAttribute('aria-label')||e.textContent||"
                  "(e.labels&&e.labels[0].textContent)).trim())named++});"
                  "var reached=[].filter.call(document.querySelectorAll('.opening'),function(e){"
                  "e.focus();return document.activeElement===e}).length;"
                  "result=(all-named)+' '+reached+' '+"
                  "(document.documentElement.scrollWidth<=innerWidth)",
                  folder) == "0 7 true|faults:");
}

// The contrast of every text against what lies behind it, as the browser computes both, by the
// formulas of WCAG 2.2 ("relative luminance", "contrast ratio").
const char* least_text_contrast = R"js(
  function channels(c){return c.match(/[\d.]+/g).map(Number)}
  function luminance(c){var v=c.slice(0,3).map(function(x){x/=255;
    return x<=0.04045?x/12.92:Math.pow((x+0.055)/1.055,2.4)});
    return 0.2126*v[0]+0.7152*v[1]+0.0722*v[2]}
  function behind(e){for(;e;e=e.parentElement){var c=channels(getComputedStyle(e).backgroundColor);
    if(c.length<4||c[3]>0)return c}return [255,255,255]}
  var least=99,texts=0;
  document.querySelectorAll('body *:not(script):not(style):not(svg):not(svg *)').forEach(
    function(e){
      if(![].some.call(e.childNodes,function(n){return n.nodeType===3&&n.data.trim()}))return;
      var a=luminance(channels(getComputedStyle(e).color)),b=luminance(behind(e));
      texts++;least=Math.min(least,(Math.max(a,b)+0.05)/(Math.min(a,b)+0.05))});
  result=(texts>40)+' '+(least>=4.5)
)js";

const char* beyond_the_edge = R"js(
  document.body.style.width='360px';
  result+=' '+[].filter.call(document.querySelectorAll('body *'),function(e){
    return !e.closest('svg')&&!e.closest('.wide')&&e.getBoundingClientRect().right>360.5}).length
)js";

TEST_CASE(
    "every text of the page has the contrast that WCAG 2.2 asks, and on a phone nothing reaches "
    "beyond the right edge") {
  const std::string folder = oracle::scratch_folder("page-contrast");
  const std::string html =
      page_of({oracle::gallery("double-mat.xml"), oracle::gallery("weighted-bottom.xml"),
               "--prices", oracle::gallery("shop/prices.xml")},
              folder);
  const std::string script = std::string(least_text_contrast) + ";" + beyond_the_edge;
  CHECK(result_of(html, script, folder) == "true true 0|faults:");
}

TEST_CASE("choices of different sizes are shown at one scale") {
  const std::string folder = oracle::scratch_folder("page-scale");
  const std::string html = page_of(
      {oracle::gallery("double-mat.xml"), oracle::gallery("seven-picture-collage.xml")}, folder);
  // Opening 1 is 9 3/4 in wide in the one and 7 3/4 in the other.
  CHECK(result_of(html,
                  "var w=[].map.call(document.querySelectorAll('.stage>svg'),function(s){"
                  "return s.querySelector('.opening').getBoundingClientRect().width});"
                  "result=Math.abs(w[0]/w[1]-9.75/7.75)<0.01",
                  folder) == "true|faults:");
}

TEST_CASE("names of one drawing do not meet those of another") {
  const std::string html =
      page_of({oracle::gallery("double-mat.xml"), oracle::gallery("double-mat.xml")},
              oracle::scratch_folder("page-ids"));
  std::vector<std::string> ids;
  const std::regex id("[ <]id=\"([^\"]*)\"");
  for (auto it = std::sregex_iterator(html.begin(), html.end(), id); it != std::sregex_iterator();
       ++it) {
    ids.push_back((*it)[1]);
  }
  std::sort(ids.begin(), ids.end());
  CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
}

TEST_CASE("text stands out from the paper as WCAG 2.2 asks") {
  // Success criteria 1.4.3 (4.5 : 1 for text) and 1.4.11 (3 : 1 for controls).
  using mullion::proof::contrast;
  CHECK(contrast({0, 0, 0}, {255, 255, 255}) == Approx(21));  // WCAG 2.2, "contrast ratio"
  CHECK(contrast({0x26, 0x24, 0x21}, {255, 255, 255}) >= 4.5);
  CHECK(contrast({0x69, 0x65, 0x5e}, {255, 255, 255}) >= 4.5);
  CHECK(contrast({0x1f, 0x5f, 0x7a}, {255, 255, 255}) >= 3);
}

TEST_CASE("a title cannot put markup into the page") {
  const std::string folder = oracle::scratch_folder("page-markup");
  oracle::write_file(folder + "/job.xml",
                     R"(<job version="1" unit="in"><title>&lt;script&gt;x()&lt;/script&gt;</title>
    <layers><layer/></layers><borders all="3"/><arrange><opening width="4" height="4"/></arrange>
    </job>)");
  const std::string html = page_of({folder + "/job.xml"}, folder);
  CHECK(html.find("<script>x()") == std::string::npos);
  CHECK(html.find("&lt;script&gt;x()") != std::string::npos);
}

}  // namespace
