#pragma once

#include "ui/load/cycle_desk.h"
#include "ui/load/trace_file.h"

#include <memory>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace loadwarden::ui {

class MappingForm;
class TraceFacts;
class TracePlot;

/// A recorder's file that is looked at: how it is read until a person has confirmed that, then its
/// picture and figures, and whether it is attached to the load.
class TraceLook : public QWidget {
    Q_OBJECT

public:
    explicit TraceLook(CycleDesk& desk, QWidget* parent = nullptr);

    void look(TraceFile file);
    [[nodiscard]] bool isLooking() const { return m_file != nullptr; }

    /// Writes picture and figures as a PDF and says where it is, or why not.
    void savePaper(const QString& file);

signals:
    void attached();
    void left();

private:
    void compute(const TraceMapping& mapping);
    void showWork(std::shared_ptr<const TraceWork> work);
    void attach();
    void askForPaper();
    void leave();

    CycleDesk& m_desk;
    MappingForm* m_mapping;
    QWidget* m_seen; ///< picture and figures
    QLabel* m_name;
    TracePlot* m_plot;
    TraceFacts* m_facts;
    QPushButton* m_attach;
    QLabel* m_refused;
    QLabel* m_saved;

    std::shared_ptr<const TraceFile> m_file;
    std::shared_ptr<const TraceWork> m_work;
    bool m_isBusy = false;
};

} // namespace loadwarden::ui
