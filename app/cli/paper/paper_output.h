#pragma once

#include "app/cli/arguments.h"
#include "app/cli/streams.h"
#include "ui/paper/kit/pages.h"

#include <QCoreApplication>

#include <memory>
#include <string>

namespace loadwarden::cli {

/// Painting needs an application for windows, though none is opened and no display is asked for.
/// Null where there is one already.
[[nodiscard]] std::unique_ptr<QCoreApplication> makePaintingApplication();

/// --page, else Letter.
[[nodiscard]] paper::PageSize pageGiven(const Arguments& given);

/// Writes the PDF and says how many pages it has.
void writeSheet(const paper::Pages& pages, const std::string& file, const Arguments& given,
                Streams streams);

} // namespace loadwarden::cli
