#include "tests/ui/paper/read_back.h"

#include "tests/core/store/store_support.h"
#include "ui/paper/kit/pdf.h"

#include <QPainter>
#include <QProcess>

#include <stdexcept>

namespace loadwarden::testing {

std::string squeezed(std::string text)
{
    std::erase_if(text, [](char c) { return c == ' ' || c == '\n' || c == '\r'; });
    return text;
}

std::vector<std::string> textOfPages(const paper::Pages& pages)
{
    const TempFolder folder;
    const auto file = folder / "sheet.pdf";
    writePdf(pages, file);
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"),
                 {QStringLiteral("-raw"), QStringLiteral("-enc"), QStringLiteral("UTF-8"),
                  QString::fromStdString(file.string()), QStringLiteral("-")});
    if (!reader.waitForFinished() || reader.exitCode() != 0) {
        throw std::runtime_error("pdftotext did not read the sheet");
    }
    std::vector<std::string> texts(1);
    for (const char c : reader.readAllStandardOutput()) {
        if (c == '\f') {
            texts.emplace_back();
        } else {
            texts.back() += c;
        }
    }
    texts.pop_back(); // each page ends with a form feed
    for (std::string& text : texts) {
        text = squeezed(text);
    }
    return texts;
}

std::string textOf(const paper::Pages& pages)
{
    std::string whole;
    for (const std::string& text : textOfPages(pages)) {
        whole += text;
    }
    return whole;
}

QImage pictureOf(const paper::Pages& pages, int page)
{
    constexpr int dotsPerInch = 100;
    const QSizeF size = paper::sizeOf(pages.size()) * dotsPerInch / paper::unitsPerInch;
    QImage picture(size.toSize(), QImage::Format_RGB32);
    picture.setDotsPerMeterX(static_cast<int>(dotsPerInch / 0.0254));
    picture.setDotsPerMeterY(static_cast<int>(dotsPerInch / 0.0254));
    picture.fill(Qt::white);
    QPainter painter(&picture);
    pages.paint(painter, page);
    return picture;
}

bool hasInkOutside(const QImage& picture, paper::PageSize size)
{
    const double dots = picture.width() / paper::sizeOf(size).width();
    const QRectF paintable = paper::paintableOf(size);
    // A line on the edge is half outside.
    const QRect inside = QRectF(paintable.topLeft() * dots, paintable.size() * dots)
                             .toAlignedRect()
                             .adjusted(-2, -2, 2, 2);
    for (int y = 0; y < picture.height(); ++y) {
        for (int x = 0; x < picture.width(); ++x) {
            if (!inside.contains(x, y) && picture.pixelColor(x, y) != Qt::white) {
                return true;
            }
        }
    }
    return false;
}

} // namespace loadwarden::testing
