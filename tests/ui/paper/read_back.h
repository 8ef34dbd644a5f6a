#pragma once

#include "ui/paper/kit/pages.h"

#include <QImage>

#include <string>
#include <vector>

namespace loadwarden::testing {

/// The text of a sheet's PDF as pdftotext reads it, a text a page, in the order in which it was
/// painted, without blanks and line ends: a wrapped word is a word.
[[nodiscard]] std::vector<std::string> textOfPages(const paper::Pages& pages);
[[nodiscard]] std::string textOf(const paper::Pages& pages);

/// A text without blanks and line ends.
[[nodiscard]] std::string squeezed(std::string text);

/// A page as a picture of 100 dots an inch.
[[nodiscard]] QImage pictureOf(const paper::Pages& pages, int page);

/// Whether anything is painted outside what may be painted on.
[[nodiscard]] bool hasInkOutside(const QImage& picture, paper::PageSize size);

} // namespace loadwarden::testing
