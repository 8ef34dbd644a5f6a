#pragma once

#include "core/desk/today.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QWidget>

class QLabel;

namespace loadwarden::ui {

class DayTrack;
class GlyphView;

/// One sterilizer on the day's strip: its name and state, its test, and its day.
class SterilizerRow : public QWidget {
    Q_OBJECT

public:
    SterilizerRow(Look& look, QWidget* parent = nullptr);

    void show(const SterilizerDay& day, const Today& today, const HouseStyle& style);

signals:
    void chosen(const QString& cycle);
    /// What the keyboard or pointer is on, in words.
    void pointedAt(const QString& what);

private:
    QLabel* m_name;
    GlyphView* m_stateGlyph;
    QLabel* m_state;
    GlyphView* m_testGlyph;
    QLabel* m_test;
    DayTrack* m_track;
};

} // namespace loadwarden::ui
