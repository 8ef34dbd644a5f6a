#pragma once

#include "core/release/finding.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QString>
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

    /// The keyboard goes back to the reason that had it before it was shown anew, where it is
    /// there.
    void focusAsBefore();

signals:
    /// A finding by its place in what was shown.
    void chosen(int index);
    /// Somebody wants to answer a finding that waits for a review.
    void reviewAsked(int index);

private:
    /// What stands in a row.
    struct Row {
        Outcome outcome{};
        QString says;
        QString next;

        friend bool operator==(const Row&, const Row&) = default;
    };

    [[nodiscard]] QWidget* makeRow(const Row& row, int index);

    Look& m_look;
    QVBoxLayout* m_rows;
    std::vector<Row> m_shown;
    QString m_hadFocus; ///< name of what had the keyboard; empty: nothing
};

} // namespace loadwarden::ui
