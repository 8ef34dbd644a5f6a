#pragma once

#include <QString>

namespace loadwarden::paper {

/// With a capital; of sheets and of pages.
[[nodiscard]] inline QString capital(QString words)
{
    if (!words.isEmpty()) {
        words[0] = words[0].toUpper();
    }
    return words;
}

} // namespace loadwarden::paper
