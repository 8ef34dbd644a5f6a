#pragma once

#include <cstdint>
#include <forward_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::body_format {

/// A JSON value as it was read. Its children stand behind it in the list of its Tree. What it says
/// is part of the text that was read, or of the tree.
class Node {
public:
    enum class Kind : std::uint8_t { other, boolean, integer, string, array, object };

    [[nodiscard]] bool isArray() const { return m_kind == Kind::array; }
    [[nodiscard]] bool isObject() const { return m_kind == Kind::object; }
    [[nodiscard]] std::optional<bool> flag() const
    {
        return m_kind == Kind::boolean ? std::optional(m_number != 0) : std::nullopt;
    }
    /// Of an integer of 64 bits; a fraction is none.
    [[nodiscard]] std::optional<std::int64_t> integer() const
    {
        return m_kind == Kind::integer ? std::optional(m_number) : std::nullopt;
    }
    /// Of a string; else null.
    [[nodiscard]] const std::string_view* text() const
    {
        return m_kind == Kind::string ? &m_text : nullptr;
    }

    /// How many elements or members.
    [[nodiscard]] std::size_t size() const { return m_size; }
    /// The name that it has as a member.
    [[nodiscard]] std::string_view name() const { return m_name; }
    /// The first child; with no children behind everything that is this one's.
    [[nodiscard]] const Node* first() const { return this + 1; }
    /// What stands behind this one and all that is in it.
    [[nodiscard]] const Node* next() const { return this + m_span; }
    /// The first member of that name, or null.
    [[nodiscard]] const Node* member(std::string_view name) const;

private:
    friend class TreeBuilder;

    Kind m_kind = Kind::other;
    std::uint32_t m_size = 0;
    std::uint32_t m_span = 1; ///< nodes: itself and all that is in it
    std::int64_t m_number = 0;
    std::string_view m_text;
    std::string_view m_name;
};

/// All values of a JSON text, which outlives it.
class Tree {
public:
    /// The whole.
    [[nodiscard]] const Node& front() const { return m_nodes.front(); }

private:
    friend class TreeBuilder;

    std::vector<Node> m_nodes;
    std::forward_list<std::string> m_decoded; ///< strings that stand otherwise in the text
};

/// Reads a JSON text (RFC 8259); nullopt where it is none, or is deeper than any body is.
[[nodiscard]] std::optional<Tree> readTree(std::string_view text);

} // namespace loadwarden::body_format
