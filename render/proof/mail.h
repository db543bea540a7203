#pragma once

// A mail with a proof, as a file that mail programs open ready to be sent: RFC 5322 and MIME (RFC
// 2045 to 2047, 2183, 2387), lines ended by CR LF. The same mail gives the same bytes: its identity
// and its boundaries come from the job's hash.

#include <string>
#include <tl/expected.hpp>

#include "render/proof/sheet.h"

namespace mullion::proof {

struct MailContents {
  std::string png, pdf;  // the page, as picture and as attachment
};

// The sender is the shop of the sheet. Errors, each one sentence: no shop, or an address that is
// not of the plain form name@example.org, in ASCII.
tl::expected<std::string, std::string> write_mail(const Sheet& sheet, const MailContents& contents);

}  // namespace mullion::proof
