#include "core/acts/nfc.h"

#include <QString>

#include <algorithm>

namespace loadwarden {
namespace {

bool isAscii(std::string_view text)
{
    return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

} // namespace

std::string toNfc(std::string_view text)
{
    if (isAscii(text)) {
        return std::string(text);
    }
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
        .normalized(QString::NormalizationForm_C)
        .toStdString();
}

bool isNfc(std::string_view text)
{
    return isAscii(text) || toNfc(text) == text;
}

} // namespace loadwarden
