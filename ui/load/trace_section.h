#pragma once

#include "core/desk/trace_work.h"
#include "ui/load/sheet_section.h"

#include <memory>

class QVBoxLayout;

namespace loadwarden::ui {

class Field;
class FileEdit;
class MappingForm;
class TraceFacts;
class TracePlot;

/// The sterilizer's own recording of the cycle: what was attached, and another file to be looked at
/// and attached. A file may also be dropped on it.
class TraceSection : public SheetSection {
    Q_OBJECT

public:
    explicit TraceSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    void goTo(const QString& subject) override;

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    /// A file while it is looked at.
    struct Looked {
        std::string name;
        std::string bytes;
        TraceBasis basis;
        ChosenMapping chosen;
    };

    void openFile();
    void open(const QString& file);
    /// A file that was attached before.
    void openKept(const std::string& id);
    void opened(Looked looked);
    void compute(const TraceMapping& mapping);
    void computed(std::shared_ptr<const TraceWork> work);
    void attach();
    void putAway();
    void refuseFile(const QString& why);

    Facts* m_facts;
    QVBoxLayout* m_kept; ///< a button for each trace that was attached
    FileEdit* m_file;
    Field* m_fileField;
    MappingForm* m_mapping;
    QWidget* m_view; ///< picture and figures of what is looked at
    TracePlot* m_plot = nullptr;
    TraceFacts* m_found = nullptr;
    QVBoxLayout* m_viewColumn;
    QPushButton* m_attach;
    QLabel* m_says;

    std::shared_ptr<const Looked> m_looked;
    std::shared_ptr<const TraceWork> m_work;
    std::string m_keptIds; ///< of what the buttons were made for
    bool m_isKept = false; ///< what is looked at is attached already
    bool m_isBusy = false;
};

} // namespace loadwarden::ui
