#include "core/acts/bodies/node.h"

#include <nlohmann/json.hpp>

#include <limits>
#include <utility>

namespace loadwarden::body_format {

/// Takes the parts of a text as nlohmann's parser meets them.
class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
public:
    TreeBuilder()
    {
        constexpr std::size_t usual = 16;
        m_tree.reserve(usual);
    }

    [[nodiscard]] Tree take() { return std::move(m_tree); }

    bool null() override { return add(Node::Kind::other); }
    bool boolean(bool value) override { return add(Node::Kind::boolean, value ? 1 : 0); }
    bool number_integer(std::int64_t value) override { return add(Node::Kind::integer, value); }
    bool number_unsigned(std::uint64_t value) override
    {
        return value <= std::numeric_limits<std::int64_t>::max()
                   ? add(Node::Kind::integer, static_cast<std::int64_t>(value))
                   : add(Node::Kind::other);
    }
    bool number_float(double /*value*/, const std::string& /*text*/) override
    {
        return add(Node::Kind::other);
    }
    bool string(std::string& value) override
    {
        add(Node::Kind::string);
        m_tree.back().m_text = std::move(value);
        return true;
    }
    bool binary(nlohmann::json::binary_t& /*value*/) override { return false; }
    bool start_object(std::size_t /*elements*/) override { return open(Node::Kind::object); }
    bool key(std::string& value) override
    {
        m_name = std::move(value);
        return true;
    }
    bool end_object() override { return close(); }
    bool start_array(std::size_t /*elements*/) override { return open(Node::Kind::array); }
    bool end_array() override { return close(); }
    bool parse_error(std::size_t /*position*/, const std::string& /*token*/,
                     const nlohmann::json::exception& /*error*/) override
    {
        return false;
    }

private:
    bool add(Node::Kind kind, std::int64_t number = 0)
    {
        Node& node = m_tree.emplace_back();
        node.m_kind = kind;
        node.m_number = number;
        node.m_name = std::move(m_name);
        m_name.clear();
        if (!m_open.empty()) {
            ++m_tree[m_open.back()].m_size;
        }
        return true;
    }
    bool open(Node::Kind kind)
    {
        // Deeper than any body, so that a strange one cannot use up the stack.
        constexpr std::size_t deepest = 16;
        add(kind);
        m_open.push_back(m_tree.size() - 1);
        return m_open.size() <= deepest;
    }
    bool close()
    {
        m_tree[m_open.back()].m_span = static_cast<std::uint32_t>(m_tree.size() - m_open.back());
        m_open.pop_back();
        return true;
    }

    Tree m_tree;
    std::string m_name;
    std::vector<std::size_t> m_open;
};

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
    TreeBuilder builder;
    if (!nlohmann::json::sax_parse(text.begin(), text.end(), &builder)) {
        return std::nullopt;
    }
    return builder.take();
}

} // namespace loadwarden::body_format
