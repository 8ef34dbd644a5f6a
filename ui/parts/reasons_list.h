#pragma once

#include "core/release/finding.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QWidget>

#include <functional>
#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

/// The reasons of a verdict, each with what to do next; choosing one leads to what settles it.
class ReasonsList : public QWidget {
    Q_OBJECT

public:
    explicit ReasonsList(Look& look, QWidget* parent = nullptr);

    /// `nameOfItem` says of which item a finding is, `nameOfSubject` what people call its subject
    /// where that is an id; both may be empty.
    void show(const std::vector<Finding>& findings, const HouseStyle& style,
              const std::function<QString(const Finding&)>& nameOfItem = {},
              const std::function<std::string(const Finding&)>& nameOfSubject = {});

signals:
    /// A finding by its place in what was shown.
    void chosen(int index);
    /// Somebody wants to answer a finding that waits for a review.
    void reviewAsked(int index);

private:
    Look& m_look;
    QVBoxLayout* m_rows;
};

} // namespace loadwarden::ui
