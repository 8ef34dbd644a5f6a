#include "core/release/rules_version.h"

namespace loadwarden {

const std::string_view rulesVersion{LOADWARDEN_RULES_DIGEST, 16};

} // namespace loadwarden
