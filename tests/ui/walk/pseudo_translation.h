#pragma once

#include <QTranslator>

namespace loadwarden::ui_tests {

/// Every sentence half as long again, as other languages need.
class PseudoTranslation : public QTranslator {
    Q_OBJECT

public:
    QString translate(const char* /*context*/, const char* sourceText,
                      const char* /*disambiguation*/, int /*n*/) const override
    {
        QString text = QString::fromUtf8(sourceText);
        const auto more = (text.size() + 1) / 2;
        for (qsizetype i = 0; i < more; ++i) {
            text += i % 7 == 0 && more > 3 ? u' ' : u'ö';
        }
        return text;
    }

    [[nodiscard]] bool isEmpty() const override { return false; }
};

} // namespace loadwarden::ui_tests
