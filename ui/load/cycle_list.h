#pragma once

#include "core/desk/loads_at_hand.h"
#include "core/words/say.h"
#include "ui/look/look.h"
#include "ui/parts/glyph_view.h"

#include <QListWidget>

namespace loadwarden::ui {

/// The cycles at hand, each with its mark, number and where it stands. Arrows choose.
class CycleList : public QListWidget {
    Q_OBJECT

public:
    explicit CycleList(Look& look, QWidget* parent = nullptr);

    void show(const std::vector<CycleAtHand>& cycles, Instant now, const HouseStyle& style);
    /// Marks a cycle as the one that is to be seen, without saying chosen().
    void mark(const QString& cycle);

signals:
    void chosen(const QString& cycle);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void choose(const QListWidgetItem* item);

    Look& m_look;
    QString m_marked;
};

} // namespace loadwarden::ui
