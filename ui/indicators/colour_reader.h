#pragma once

#include "ui/indicators/indicator_reader.h"

class QButtonGroup;

namespace loadwarden::ui {

/// A colour of the facility's sample, or that there is none. A screen reader passes over it: its
/// words stand beside it.
class Swatch : public QWidget {
    Q_OBJECT

public:
    /// `rgb` as "#rrggbb"; anything else is no sample.
    Swatch(Look& look, const QString& rgb, QWidget* parent = nullptr);

    [[nodiscard]] bool hasSample() const { return m_colour.isValid(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Look& m_look;
    QColor m_colour;
};

/// A colour that changes, beside the product's own start and end colours.
class ColourReader : public IndicatorReader {
    Q_OBJECT

public:
    ColourReader(Look& look, const ReadingGuide& guide, AnswersBy answersBy,
                 QWidget* parent = nullptr);

    [[nodiscard]] std::optional<Seen> seen() const override;
    void clear() override;

private:
    [[nodiscard]] QWidget* makePatches(AnswersBy answersBy);

    Look& m_look;
    SeenLine* m_says = nullptr;
    QButtonGroup* m_choices;
};

/// The two colours of a product with their words, side by side, and what samples are worth.
[[nodiscard]] QWidget* makeColourSamples(Look& look,
                                         const std::optional<ReadingDirections>& directions);

} // namespace loadwarden::ui
