#include "core/acts/bodies/node.h"

#include "core/journal/canonical_scan.h"

#include <nlohmann/json.hpp>

#include <array>
#include <limits>
#include <utility>

namespace loadwarden::body_format {

/// Puts the values of a text into a tree in the order in which they are met.
class TreeBuilder {
public:
    TreeBuilder()
    {
        constexpr std::size_t usual = 16;
        m_tree.m_nodes.reserve(usual);
    }

    [[nodiscard]] Tree take() { return std::move(m_tree); }

    bool add(Node::Kind kind, std::int64_t number = 0)
    {
        Node& node = m_tree.m_nodes.emplace_back();
        node.m_kind = kind;
        node.m_number = number;
        node.m_name = std::exchange(m_name, {});
        if (m_depth != 0) {
            ++m_tree.m_nodes[m_open[m_depth - 1]].m_size;
        }
        return true;
    }
    bool addText(std::string_view text)
    {
        add(Node::Kind::string);
        m_tree.m_nodes.back().m_text = text;
        return true;
    }
    void setName(std::string_view name) { m_name = name; }

    /// Keeps what is no part of the text.
    std::string_view keep(std::string decoded)
    {
        return m_tree.m_decoded.emplace_front(std::move(decoded));
    }

    bool open(Node::Kind kind)
    {
        add(kind);
        if (m_depth == deepest) {
            return false;
        }
        m_open[m_depth++] = m_tree.m_nodes.size() - 1;
        return true;
    }
    bool close()
    {
        const std::size_t opened = m_open[--m_depth];
        m_tree.m_nodes[opened].m_span = static_cast<std::uint32_t>(m_tree.m_nodes.size() - opened);
        return true;
    }

private:
    // Deeper than any body, so that a strange one cannot use up the stack.
    static constexpr std::size_t deepest = 16;

    Tree m_tree;
    std::string_view m_name; ///< of the next value
    std::array<std::size_t, deepest> m_open{};
    std::size_t m_depth = 0;
};

namespace {

/// Reads a text as this program writes it, in the journal's canonical form, but for the order of
/// members, which does not matter here.
class CanonicalReader {
public:
    explicit CanonicalReader(std::string_view text) : m_scan(text) {}

    bool readAll(TreeBuilder& into) { return readValue(into) && m_scan.rest().empty(); }

private:
    bool readValue(TreeBuilder& into)
    {
        if (m_scan.rest().empty()) {
            return false;
        }
        switch (m_scan.rest().front()) {
        case '{': return readObject(into);
        case '[': return readArray(into);
        case '"': {
            std::string_view text;
            return readString(into, text) && into.addText(text);
        }
        case 't': return m_scan.take("true") && into.add(Node::Kind::boolean, 1);
        case 'f': return m_scan.take("false") && into.add(Node::Kind::boolean, 0);
        case 'n': return m_scan.take("null") && into.add(Node::Kind::other);
        default: {
            std::int64_t number = 0;
            return m_scan.takeInteger(number) && into.add(Node::Kind::integer, number);
        }
        }
    }

    bool readString(TreeBuilder& into, std::string_view& text)
    {
        std::string decoded;
        if (!m_scan.takeString(text, decoded)) {
            return false;
        }
        if (text.data() == decoded.data()) {
            text = into.keep(std::move(decoded));
        }
        return true;
    }

    bool readArray(TreeBuilder& into)
    {
        if (!m_scan.take("[") || !into.open(Node::Kind::array)) {
            return false;
        }
        if (m_scan.take("]")) {
            return into.close();
        }
        do {
            if (!readValue(into)) {
                return false;
            }
        } while (m_scan.take(","));
        return m_scan.take("]") && into.close();
    }

    bool readObject(TreeBuilder& into)
    {
        if (!m_scan.take("{") || !into.open(Node::Kind::object)) {
            return false;
        }
        if (m_scan.take("}")) {
            return into.close();
        }
        do {
            std::string_view name;
            if (!readString(into, name) || !m_scan.take(":")) {
                return false;
            }
            into.setName(name);
            if (!readValue(into)) {
                return false;
            }
        } while (m_scan.take(","));
        return m_scan.take("}") && into.close();
    }

    CanonicalScan m_scan;
};

/// Takes the parts of any text as nlohmann's parser meets them.
class AnyReader final : public nlohmann::json_sax<nlohmann::json> {
public:
    explicit AnyReader(TreeBuilder& into) : m_into(into) {}

    bool null() override { return m_into.add(Node::Kind::other); }
    bool boolean(bool value) override { return m_into.add(Node::Kind::boolean, value ? 1 : 0); }
    bool number_integer(std::int64_t value) override
    {
        return m_into.add(Node::Kind::integer, value);
    }
    bool number_unsigned(std::uint64_t value) override
    {
        return value <= std::numeric_limits<std::int64_t>::max()
                   ? m_into.add(Node::Kind::integer, static_cast<std::int64_t>(value))
                   : m_into.add(Node::Kind::other);
    }
    bool number_float(double /*value*/, const std::string& /*text*/) override
    {
        return m_into.add(Node::Kind::other);
    }
    bool string(std::string& value) override
    {
        return m_into.addText(m_into.keep(std::move(value)));
    }
    bool binary(nlohmann::json::binary_t& /*value*/) override { return false; }
    bool start_object(std::size_t /*elements*/) override { return m_into.open(Node::Kind::object); }
    bool key(std::string& value) override
    {
        m_into.setName(m_into.keep(std::move(value)));
        return true;
    }
    bool end_object() override { return m_into.close(); }
    bool start_array(std::size_t /*elements*/) override { return m_into.open(Node::Kind::array); }
    bool end_array() override { return m_into.close(); }
    bool parse_error(std::size_t /*position*/, const std::string& /*token*/,
                     const nlohmann::json::exception& /*error*/) override
    {
        return false;
    }

private:
    TreeBuilder& m_into;
};

} // namespace

const Node* Node::member(std::string_view name) const
{
    if (!isObject()) {
        return nullptr;
    }
    const Node* each = first();
    for (std::size_t i = 0; i < m_size; ++i, each = each->next()) {
        if (each->m_name == name) {
            return each;
        }
    }
    return nullptr;
}

std::optional<Tree> readTree(std::string_view text)
{
    // Nearly all bodies stand in the canonical form, which is read several times as fast.
    if (TreeBuilder builder; CanonicalReader(text).readAll(builder)) {
        return builder.take();
    }
    TreeBuilder builder;
    AnyReader reader(builder);
    if (!nlohmann::json::sax_parse(text.begin(), text.end(), &reader)) {
        return std::nullopt;
    }
    return builder.take();
}

} // namespace loadwarden::body_format
