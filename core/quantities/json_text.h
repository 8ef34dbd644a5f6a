#pragma once

#include <string>
#include <string_view>

namespace loadwarden {

/// Appends a JSON string (RFC 8259) with its quotation marks. Bytes that are no UTF-8 become
/// U+FFFD, one for each byte that starts no character.
void appendJsonString(std::string& out, std::string_view text);

} // namespace loadwarden
