#include "app/cli/paper/paper_output.h"

#include "ui/paper/kit/pdf.h"

#include <QGuiApplication>

#include <ostream>

namespace loadwarden::cli {

std::unique_ptr<QCoreApplication> makePaintingApplication()
{
    if (QCoreApplication::instance() != nullptr) {
        return nullptr;
    }
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    static int argc = 1;
    static char name[] = "loadwarden-cli";
    static char* argv[] = {name, nullptr};
    return std::make_unique<QGuiApplication>(argc, argv);
}

paper::PageSize pageGiven(const Arguments& given)
{
    const std::string_view size = given.value("--page").value_or("letter");
    if (size == "letter") {
        return paper::PageSize::letter;
    }
    if (size == "a4") {
        return paper::PageSize::a4;
    }
    throw UsageError("--page is letter or a4, not \"" + std::string(size) + '"');
}

void writeSheet(const paper::Pages& pages, const std::string& file, const Arguments& given,
                Streams streams)
{
    writePdf(pages, file);
    if (given.has("--json")) {
        streams.out << "{\"pages\":" << pages.count() << "}\n";
    } else {
        streams.out << file << ": " << pages.count()
                    << (pages.count() == 1 ? " page.\n" : " pages.\n");
    }
}

} // namespace loadwarden::cli
