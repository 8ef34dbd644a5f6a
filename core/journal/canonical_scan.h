#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace loadwarden {

/// Takes parts of a text from its front that stand in the journal's canonical form (FORMAT.md).
/// Each step says whether what it wanted was there; after a false the rest is undefined.
class CanonicalScan {
public:
    explicit CanonicalScan(std::string_view text) : m_rest(text) {}

    [[nodiscard]] std::string_view rest() const { return m_rest; }

    [[nodiscard]] bool take(std::string_view wanted)
    {
        if (!m_rest.starts_with(wanted)) {
            return false;
        }
        m_rest.remove_prefix(wanted.size());
        return true;
    }
    /// Within ±2^53.
    [[nodiscard]] bool takeInteger(std::int64_t& value);
    /// Within the type, too.
    [[nodiscard]] bool takeInteger(std::int32_t& value);
    /// A string; `value` is what it says.
    [[nodiscard]] bool takeString(std::string& value);
    /// The same; `value` is a part of the text, or of `decoded` where something is escaped in it.
    [[nodiscard]] bool takeString(std::string_view& value, std::string& decoded);
    /// Any value, with members sorted and none twice, not nested more than 32 deep; `text` is its
    /// part of the text.
    [[nodiscard]] bool takeValue(std::string_view& text);

private:
    [[nodiscard]] bool skipString(std::string* value);
    [[nodiscard]] std::size_t plainLength() const;
    [[nodiscard]] bool skipValue(int depth);
    [[nodiscard]] bool skipArray(int depth);
    [[nodiscard]] bool skipObject(int depth);

    std::string_view m_rest;
};

} // namespace loadwarden
