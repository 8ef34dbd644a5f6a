#pragma once

#include "core/release/finding.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

/// The reasons of a verdict, each with what to do next; choosing one leads to what settles it.
class ReasonsList : public QWidget {
    Q_OBJECT

public:
    explicit ReasonsList(Look& look, QWidget* parent = nullptr);

    void show(const std::vector<Finding>& findings, const HouseStyle& style);

signals:
    /// A finding by its place in what was shown.
    void chosen(int index);

private:
    Look& m_look;
    QVBoxLayout* m_rows;
};

} // namespace loadwarden::ui
