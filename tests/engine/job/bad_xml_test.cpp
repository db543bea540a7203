// Files that are no job at all: broken XML, other encodings, and what XML allows but we refuse.

#include "complaint.h"

using complaint::expect;

namespace {

const std::string good =
    complaint::job(complaint::pictures + complaint::layers + complaint::arrange);

std::string in_note(const std::string& text) {
  return complaint::job(complaint::pictures + complaint::layers + complaint::arrange + "<note>" +
                        text + "</note>");
}

}  // namespace

TEST_CASE("broken XML is reported where it breaks") {
  expect("@", "job-xml", "found no element; expected <job>");
  expect("<job version=\"1\" unit=\"in\">\n  <layers>\n    <layer/>\n  @</layer>\n</job>",
         "job-xml", "found </layer>; expected </layers>, for the element of line 2");
  expect("<job version=\"1\" unit=\"in\">\n  <layers>\n    <layer/>\n@", "job-xml",
         "the file ends; expected </layers>, for the element of line 2");
  expect("<job/>\n@</job>", "job-xml", "found </job> where no element is open");
  expect(good + "@<job/>", "job-xml",
         "found more than one element at the top of the file; expected one <job> and nothing else "
         "but comments");
  expect(good + "@text", "job-xml",
         "found more than one element at the top of the file; expected one <job> and nothing else "
         "but comments");
}

TEST_CASE("what XML forbids is refused even where the parser below would let it pass") {
  expect("<!-- a @-- b -->" + good, "job-xml",
         "found -- within a comment; XML has it only at a comment's end");
  expect(in_note("a @& b"), "job-entity",
         "found a bare &; expected &amp; for the sign itself, or one of &lt; &gt; &quot; &apos;");
  expect(in_note("a @&eacute; b"), "job-entity",
         "found \"&eacute;\"; expected &amp; for the sign itself, or one of &lt; &gt; &quot; "
         "&apos;");
  expect(in_note("a @&#0; b"), "job-entity",
         "found \"&#0;\"; expected &amp; for the sign itself, or one of &lt; &gt; &quot; &apos;");
  expect(in_note("a @]]> b"), "job-xml", "found ]]> in text; expected ]]&gt;");
  expect("<job version=\"1\" unit=\"in\" reference=\"a@<b\">" + complaint::layers +
             "<arrange><opening width=\"1\" height=\"1\"/></arrange></job>",
         "job-xml", "found < in a value; expected &lt;");
  CHECK(mullion::parse_job(in_note("a &amp; b &#xE9; &lt;<![CDATA[ & ]]>"), "").value().note ==
        "a & b \u00e9 < &");
}

TEST_CASE("a document type declaration is refused, so that no entity can grow") {
  const std::string message = "a job file has no document type declaration; take it out";
  expect("@<!DOCTYPE job [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]>" + good, "job-doctype",
         message);
  expect("@<!DOCTYPE job SYSTEM \"file:///etc/passwd\">" + good, "job-doctype", message);
}

TEST_CASE("a job file is in UTF-8") {
  expect(in_note("caf@\xE9"), "job-encoding",
         "found bytes that are not a character in UTF-8, or a control character; save the file as "
         "plain text in UTF-8");
  expect(in_note("a@\x01"), "job-encoding",
         "found bytes that are not a character in UTF-8, or a control character; save the file as "
         "plain text in UTF-8");
  expect("@<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" + good, "job-encoding",
         "found encoding \"ISO-8859-1\"; expected \"UTF-8\"");
  expect("\n@<?xml version=\"1.0\"?>" + good, "job-xml",
         "found a declaration that is not right; expected <?xml version=\"1.0\" "
         "encoding=\"UTF-8\"?> at the very beginning of the file");
  for (const char* bad :
       {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xEF\xBF\xBF", "\x80", "\xE2\x82"}) {
    INFO(bad);
    CHECK_FALSE(mullion::parse_job(in_note(bad), ""));
  }
}
