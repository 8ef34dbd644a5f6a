#pragma once

#include "ui/load/sheet_section.h"

#include <map>
#include <vector>

class QCheckBox;

namespace loadwarden::ui {

/// Something that was looked at or not, and was good or not: three states on one key.
class ThreeWay : public QWidget {
    Q_OBJECT

public:
    ThreeWay(const QString& of, const QString& what, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<bool> value() const { return m_value; }
    void set(std::optional<bool> value);

signals:
    /// Somebody said something of it.
    void answered();

private:
    QString m_of;
    QString m_what;
    QPushButton* m_button;
    std::optional<bool> m_value;
};

/// Unloading: what came out is what went in, and every package was looked at.
class PackageSection : public SheetSection {
    Q_OBJECT

public:
    explicit PackageSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    void goTo(const QString& subject) override;

    /// A label that was scanned at unloading: its package came out. False: it is of none of these.
    bool cameOut(const QString& label);

private:
    struct Row {
        std::string id;
        QString label;
        QCheckBox* out;
        std::vector<ThreeWay*> looks; ///< cooled, dry, intact, sealed, label agrees
    };

    void makeRows(const LoadSheet& sheet);
    void showChecked(const LoadSheet& sheet);
    void allGood();
    void record();

    QGridLayout* m_grid;
    QWidget* m_form;
    Facts* m_checked;
    QLabel* m_error;
    QPushButton* m_record;
    QPushButton* m_again; ///< brings the rows back once everything was looked at
    bool m_isAgain = false;
    std::vector<Row> m_rows;
    QString m_askedAbout; ///< packages that did not come out, of which somebody was asked
};

} // namespace loadwarden::ui
