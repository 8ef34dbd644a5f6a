#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace loadwarden {

/// Takes a text from its front.
class TextCursor {
public:
    explicit constexpr TextCursor(std::string_view text) noexcept : m_rest(text) {}

    [[nodiscard]] bool isAtEnd() const noexcept { return m_rest.empty(); }
    [[nodiscard]] char peek() const noexcept { return m_rest.empty() ? '\0' : m_rest.front(); }

    bool take(char c) noexcept
    {
        const bool isThere = peek() == c && !m_rest.empty();
        m_rest.remove_prefix(isThere ? 1 : 0);
        return isThere;
    }

    void skipBlanks() noexcept
    {
        while (peek() == ' ') {
            m_rest.remove_prefix(1);
        }
    }

    /// A whole number of at most that many figures.
    [[nodiscard]] std::optional<int> number(std::size_t mostFigures) noexcept
    {
        int value = 0;
        m_figures = 0;
        while (m_figures < mostFigures && isFigure()) {
            value = value * 10 + (peek() - '0');
            m_rest.remove_prefix(1);
            ++m_figures;
        }
        if (m_figures == 0 || isFigure()) {
            return std::nullopt;
        }
        return value;
    }
    [[nodiscard]] std::size_t figures() const noexcept { return m_figures; } ///< of the last number

    /// A point or comma and what stands behind it; 0 where there is none.
    [[nodiscard]] std::optional<double> decimals() noexcept
    {
        if (peek() != '.' && peek() != ',') {
            return 0.0;
        }
        m_rest.remove_prefix(1);
        double value = 0;
        double scale = 1;
        std::size_t count = 0;
        for (; isFigure(); ++count) {
            if (count < 9) { // a nanosecond; more says nothing
                value = value * 10 + (peek() - '0');
                scale *= 10;
            }
            m_rest.remove_prefix(1);
        }
        if (count == 0) {
            return std::nullopt;
        }
        return value / scale;
    }

    /// Takes all letters that come; the first three of them, as small ones.
    [[nodiscard]] std::string_view letters(std::array<char, 3>& first) noexcept
    {
        std::size_t count = 0;
        while ((peek() >= 'a' && peek() <= 'z') || (peek() >= 'A' && peek() <= 'Z')) {
            if (count < first.size()) {
                first[count] = static_cast<char>(peek() | 0x20);
            }
            ++count;
            m_rest.remove_prefix(1);
        }
        return {first.data(), count < first.size() ? count : first.size()};
    }

private:
    [[nodiscard]] bool isFigure() const noexcept { return peek() >= '0' && peek() <= '9'; }

    std::string_view m_rest;
    std::size_t m_figures = 0;
};

} // namespace loadwarden
