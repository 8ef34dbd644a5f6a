#include "ui/paper/kit/pdf.h"

#include <QMarginsF>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

#include <stdexcept>

namespace loadwarden::paper {
namespace {

[[noreturn]] void fail(const std::filesystem::path& file, const QString& why)
{
    throw std::runtime_error("the sheet could not be written to " + file.string() + ": "
                             + why.toStdString());
}

} // namespace

void writePdf(const Pages& pages, const std::filesystem::path& file)
{
    QSaveFile out(QString::fromStdString(file.string()));
    if (!out.open(QIODevice::WriteOnly)) {
        fail(file, out.errorString());
    }
    {
        QPdfWriter writer(&out);
        writer.setResolution(static_cast<int>(unitsPerInch));
        writer.setTitle(pages.frame().title + QStringLiteral(" ") + pages.frame().subject);
        writer.setPageLayout(
            {QPageSize(pages.size() == PageSize::letter ? QPageSize::Letter : QPageSize::A4),
             QPageLayout::Portrait, QMarginsF()});
        QPainter painter(&writer);
        if (!painter.isActive()) {
            fail(file, QStringLiteral("nothing can be painted"));
        }
        for (int page = 0; page < pages.count(); ++page) {
            if (page > 0 && !writer.newPage()) {
                fail(file, out.errorString());
            }
            pages.paint(painter, page);
        }
    }
    if (!out.commit()) {
        fail(file, out.errorString());
    }
}

} // namespace loadwarden::paper
