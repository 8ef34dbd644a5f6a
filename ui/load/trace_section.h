#pragma once

#include "ui/load/sheet_section.h"
#include "ui/load/trace_file.h"

#include <map>

class QVBoxLayout;

namespace loadwarden::ui {

class Field;
class FileEdit;
class TraceLook;

/// The sterilizer's own recording of the cycle: what was attached, and another file to be looked at
/// and attached.
class TraceSection : public SheetSection {
    Q_OBJECT

public:
    explicit TraceSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    using QWidget::show;
    void goTo(const QString& subject) override;

    /// The file's name of a trace that is attached; empty: there is none.
    [[nodiscard]] std::string nameOf(const std::string& id) const;

    /// Looks at a file of this computer.
    void open(const QString& path);

private:
    void openTyped();
    void openKept(const std::string& id);
    void look(TraceFile file);
    void refuse(const QString& why);

    Facts* m_facts;
    QVBoxLayout* m_kept; ///< a button for each trace that was attached
    FileEdit* m_file;
    Field* m_field;
    TraceLook* m_look = nullptr;                ///< made when something is first looked at
    std::map<std::string, std::string> m_names; ///< of what is attached, by its id
    bool m_isBusy = false;
};

} // namespace loadwarden::ui
