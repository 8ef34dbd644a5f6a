#include "ui/paper/kit/wrapped_text.h"

#include <QPainter>
#include <QTextCharFormat>
#include <QTextLayout>

#include <algorithm>

namespace loadwarden::paper {

WrappedText::WrappedText(const Runs& runs, double width, Type type) : m_type(type)
{
    QString whole;
    QList<QTextLayout::FormatRange> formats;
    for (const Run& run : runs) {
        QString words = run.text;
        words.replace(u'\n', QChar::LineSeparator);
        QTextCharFormat format;
        format.setFont(fontOf(type, run.face));
        formats.append({static_cast<int>(whole.size()), static_cast<int>(words.size()), format});
        whole += words;
    }
    m_layout = std::make_shared<QTextLayout>(whole, fontOf(type));
    m_layout->setCacheEnabled(true);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setUseDesignMetrics(true);
    m_layout->setTextOption(option);
    m_layout->setFormats(formats);
    m_layout->beginLayout();
    for (QTextLine line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(width);
        line.setPosition({0, 0});
    }
    m_layout->endLayout();
}

int WrappedText::lines() const
{
    return m_layout->text().isEmpty() ? 0 : m_layout->lineCount();
}

void WrappedText::paint(QPainter& painter, QPointF at, int first, int count) const
{
    const int end = std::min(lines(), first + count);
    for (int i = first; i < end; ++i) {
        const QTextLine line = m_layout->lineAt(i);
        const double spare = lineHeight(m_type) - line.height();
        line.draw(&painter, {at.x(), at.y() + spare / 2});
        at.ry() += lineHeight(m_type);
    }
}

} // namespace loadwarden::paper
