#pragma once

#include "core/guidance/answer.h"
#include "core/words/say.h"
#include "ui/look/look.h"
#include "ui/questions/topic_paper.h"

#include <QFrame>

class QVBoxLayout;

namespace loadwarden::ui {

/// A topic: the answer, what to do now, why, what the rules decide, caution, sources; and it on
/// paper.
class TopicView : public QFrame {
    Q_OBJECT

public:
    TopicView(Look& look, const TopicAnswer& answer, const TopicLibrary& library,
              QWidget* parent = nullptr);

signals:
    void wantsTopic(const QString& id);
    void wantsPaper(TopicSheet sheet);

private:
    void addCases(const TopicAnswer& answer);
    void addCalculations(const TopicAnswer& answer);
    void addGrounds(const TopicAnswer& answer);
    void addPaper();
    void addRelated(const Topic& topic, const TopicLibrary& library);

    QVBoxLayout* m_column;
};

} // namespace loadwarden::ui
