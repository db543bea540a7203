#include "render/proof/mail.h"

#include <gmime/gmime.h>

#include <algorithm>
#include <memory>

#include "render/proof/facts.h"
#include "render/proof/markup.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

template <class T>
struct Unref {
  void operator()(T* object) const { g_object_unref(object); }
};
template <class T>
using Owned = std::unique_ptr<T, Unref<T>>;

// addr-spec of RFC 5322, 3.4.1, without its quoted and literal forms.
bool is_plain_address(const std::string& address) {
  const std::size_t at = address.find('@');
  if (at == std::string::npos || at == 0 || at + 1 == address.size()) return false;
  const std::string_view atext = "!#$%&'*+-/=?^_`{|}~.";
  const auto plain = [&](char c) {
    return g_ascii_isalnum(c) || atext.find(c) != std::string_view::npos;
  };
  const std::string name = address.substr(0, at), domain = address.substr(at + 1);
  return std::all_of(name.begin(), name.end(), plain) &&
         std::all_of(domain.begin(), domain.end(), plain);
}

// A header is one line, whatever a job file holds.
std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }, ' ');
  return text;
}

struct Words {
  std::string subject, text, html;
};

std::string subject_of(const Job& job, const Locale& locale) {
  if (job.reference.empty() || job.title.empty()) {
    return one_line(locale.say("Proof %1 (revision %2)", words::title_of(job), job.revision));
  }
  return one_line(locale.say("Proof %1: %2 (revision %3)", job.reference, job.title, job.revision));
}

std::string summary_of(const Choice& choice, const Locale& locale) {
  std::string out = choice.caption;
  for (const std::string& note : choice.notes) out += "; " + note;
  const std::string total = total_of(choice);
  return total.empty() ? out : locale.say("%1; total %2", out, total);
}

Words words_for(const Sheet& sheet, const std::string& picture_id) {
  const Job& job = *sheet.choices.front().piece.job;
  const Locale& locale = sheet.locale;
  const std::string greeting =
      job.customer.empty() ? locale.say("Good day,") : locale.say("Dear %1,", job.customer);
  const std::string title = words::title_of(job);
  const std::string intro = locale.say(
      "here is the proof of \"%1\", revision %2 (%3). It is attached as a PDF for you to print and "
      "sign.",
      title, job.revision, job_mark(job));
  std::string check = locale.say(
      "Please check the spelling of every name and title, the crop of every picture, the sizes and "
      "the boards. Colours on a screen differ from the board itself.");
  if (sheet.choices.size() > 1) {
    check += " " + locale.say("Please tell us the letter that you choose.");
  }
  const std::string closing = locale.say("With kind regards,"), shop = sheet.head->shop.name;
  Words out;
  out.subject = subject_of(job, locale);
  out.text = greeting + "\n\n" + intro + "\n\n" + check + "\n\n";
  std::string captions;
  for (std::size_t i = 0; sheet.choices.size() > 1 && i < sheet.choices.size(); ++i) {
    const std::string summary = summary_of(sheet.choices[i], locale);
    out.text += letter_of(i) + ": " + summary + "\n";
    captions += "<p><b>" + letter_of(i) + "</b> " + escaped(summary) + "</p>";
  }
  out.text += "\n" + closing + "\n" + shop + "\n";
  out.html = "<!DOCTYPE html><html lang=\"" + locale.tag() +
             "\"><head><meta charset=\"utf-8\"><title>" + escaped(out.subject) +
             "</title></head><body style=\"font-family:sans-serif;color:#262421\"><p>" +
             escaped(greeting) + "</p><p>" + escaped(intro) + "</p><p>" + escaped(check) + "</p>" +
             captions + "<p><img src=\"cid:" + picture_id + "\" alt=\"" +
             escaped(locale.say("Proof of %1", title)) +
             "\" style=\"max-width:100%;border:1px solid #cfcbc3\"></p><p>" + escaped(closing) +
             "<br>" + escaped(shop) + "</p></body></html>\n";
  return out;
}

Owned<GMimeTextPart> text_part(const char* subtype, const std::string& text) {
  Owned<GMimeTextPart> part(g_mime_text_part_new_with_subtype(subtype));
  g_mime_text_part_set_charset(part.get(), "utf-8");
  g_mime_text_part_set_text(part.get(), text.c_str());
  g_mime_part_set_content_encoding(GMIME_PART(part.get()), GMIME_CONTENT_ENCODING_QUOTEDPRINTABLE);
  return part;
}

Owned<GMimePart> file_part(const char* type, const char* subtype, const std::string& bytes,
                           const std::string& name, const char* disposition) {
  Owned<GMimePart> part(g_mime_part_new_with_type(type, subtype));
  const Owned<GMimeStream> stream(g_mime_stream_mem_new_with_buffer(bytes.data(), bytes.size()));
  const Owned<GMimeDataWrapper> content(
      g_mime_data_wrapper_new_with_stream(stream.get(), GMIME_CONTENT_ENCODING_DEFAULT));
  g_mime_part_set_content(part.get(), content.get());
  g_mime_part_set_content_encoding(part.get(), GMIME_CONTENT_ENCODING_BASE64);
  g_mime_object_set_disposition(GMIME_OBJECT(part.get()), disposition);
  g_mime_part_set_filename(part.get(), name.c_str());
  return part;
}

Owned<GMimeMultipart> multipart(const char* subtype, const std::string& hash) {
  Owned<GMimeMultipart> out(g_mime_multipart_new_with_subtype(subtype));
  // The equals sign and underscore never stand beside one another in quoted-printable or base64.
  const std::string boundary = "=_" + std::string(subtype) + "-" + hash.substr(0, 32);
  g_mime_multipart_set_boundary(out.get(), boundary.c_str());
  return out;
}

void add(const Owned<GMimeMultipart>& parent, void* child) {
  g_mime_multipart_add(parent.get(), GMIME_OBJECT(child));
}

Owned<GMimeMultipart> body_of(const Sheet& sheet, const MailContents& contents, const Words& words,
                              const std::string& hash, const std::string& picture_id) {
  const Job& job = *sheet.choices.front().piece.job;
  const std::string name = "proof-" + job_mark(job);
  const auto picture = file_part("image", "png", contents.png, name + ".png", "inline");
  g_mime_object_set_content_id(GMIME_OBJECT(picture.get()), picture_id.c_str());
  auto related = multipart("related", hash), alternative = multipart("alternative", hash),
       mixed = multipart("mixed", hash);
  g_mime_object_set_content_type_parameter(GMIME_OBJECT(related.get()), "type", "text/html");
  add(related, text_part("html", words.html).get());
  add(related, picture.get());
  add(alternative, text_part("plain", words.text).get());
  add(alternative, related.get());
  add(mixed, alternative.get());
  add(mixed, file_part("application", "pdf", contents.pdf, name + ".pdf", "attachment").get());
  return mixed;
}

void set_date(GMimeMessage* message, const std::string& date) {
  const std::string moment = (date.size() == 10 ? date : "2000-01-01") + "T12:00:00Z";
  GDateTime* time = g_date_time_new_from_iso8601(moment.c_str(), nullptr);
  g_mime_message_set_date(message, time);
  g_date_time_unref(time);
}

std::string bytes_of(GMimeMessage* message) {
  GMimeFormatOptions* options = g_mime_format_options_new();
  g_mime_format_options_set_newline_format(options, GMIME_NEWLINE_FORMAT_DOS);
  char* text = g_mime_object_to_string(GMIME_OBJECT(message), options);
  std::string out(text);
  g_free(text);
  g_mime_format_options_free(options);
  return out;
}

}  // namespace

tl::expected<std::string, std::string> write_mail(const Sheet& sheet,
                                                  const MailContents& contents) {
  const Job& job = *sheet.choices.front().piece.job;
  if (!sheet.head || sheet.head->shop.email.empty()) {
    return tl::unexpected<std::string>("a mail needs a sender: give a shop file with an email");
  }
  for (const std::string& address : {sheet.head->shop.email, job.email}) {
    if (!address.empty() && !is_plain_address(address)) {
      return tl::unexpected("found the mail address \"" + address +
                            "\"; expected one such as name@example.org, in ASCII");
    }
  }
  g_mime_init();
  const std::string hash = job_hash(job), from = sheet.head->shop.email;
  const std::string domain = from.substr(from.find('@') + 1);
  const std::string id = hash.substr(0, 32) + "." + std::to_string(job.revision) + "@" + domain;
  const std::string picture_id = "picture." + id;
  const Words words = words_for(sheet, picture_id);

  const Owned<GMimeMessage> message(g_mime_message_new(TRUE));
  g_mime_message_add_mailbox(message.get(), GMIME_ADDRESS_TYPE_FROM,
                             one_line(sheet.head->shop.name).c_str(), from.c_str());
  if (!job.email.empty()) {
    g_mime_message_add_mailbox(message.get(), GMIME_ADDRESS_TYPE_TO, one_line(job.customer).c_str(),
                               job.email.c_str());
  }
  g_mime_message_set_subject(message.get(), words.subject.c_str(), "utf-8");
  set_date(message.get(), job.date);
  g_mime_message_set_message_id(message.get(), id.c_str());
  // Mail programs that know it open the file for sending, not for reading.
  g_mime_object_set_header(GMIME_OBJECT(message.get()), "X-Unsent", "1", nullptr);
  g_mime_message_set_mime_part(
      message.get(), GMIME_OBJECT(body_of(sheet, contents, words, hash, picture_id).get()));
  return bytes_of(message.get());
}

}  // namespace mullion::proof
