#pragma once

#include "core/indicators/indicator.h"
#include "ui/indicators/reading_guide.h"
#include "ui/look/look.h"

#include <QLabel>
#include <QWidget>

#include <optional>

namespace loadwarden::ui {

/// Where answers are given: by the reader itself, or by what stands around it.
enum class AnswersBy : std::uint8_t { reader, surroundings };

/// What is seen on one indicator, shown on a neutral drawing of its kind.
class IndicatorReader : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    /// nullopt: nothing is shown or chosen yet.
    [[nodiscard]] virtual std::optional<Seen> seen() const = 0;
    /// Begins anew.
    virtual void clear() = 0;

signals:
    void changed();
};

/// The reader for a kind of product; null for vials, which answer by growth.
[[nodiscard]] IndicatorReader* makeReader(Look& look, Response response, const ReadingGuide& guide,
                                          AnswersBy answersBy);

/// What follows of what is seen, in a line that has its place from the beginning.
class SeenLine : public QLabel {
    Q_OBJECT

public:
    /// `before` stands there as long as nothing is seen; `lines` is the room that is kept.
    SeenLine(Look& look, const QString& before, int lines, QWidget* parent = nullptr);

    void show(std::optional<Seen> seen);
    using QLabel::show;

private:
    QString m_before;
};

} // namespace loadwarden::ui
