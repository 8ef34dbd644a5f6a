#pragma once

#include "ui/indicators/indicator_reader.h"

class QPushButton;

namespace loadwarden::ui {

class FrontStrip;

/// A moving front, placed on a strip where one sees it end. On the boundary or short of it is a
/// reject, whoever looks.
class FrontReader : public IndicatorReader {
    Q_OBJECT

public:
    FrontReader(Look& look, const ReadingGuide& guide, AnswersBy answersBy,
                QWidget* parent = nullptr);

    [[nodiscard]] std::optional<Seen> seen() const override;
    void clear() override;

    [[nodiscard]] FrontStrip* strip() const { return m_strip; }

private:
    void showPlace();
    [[nodiscard]] QString placeText(int front) const;

    std::optional<ReadingDirections> m_directions;
    int m_boundary;
    FrontStrip* m_strip;
    QLabel* m_place;
    SeenLine* m_says;
    QPushButton* m_notSure = nullptr;
};

} // namespace loadwarden::ui
