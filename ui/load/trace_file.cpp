#include "ui/load/trace_file.h"

#include "core/exchange/trace_mapping_json.h"
#include "core/store/attachments.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>

#include <utility>

namespace loadwarden::ui {
namespace {

QString translated(const char* says)
{
    return QCoreApplication::translate("TraceFile", says);
}

} // namespace

std::variant<QString, TraceFile> traceFileOf(Office& office, const std::string& cycle,
                                             const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return translated(QT_TRANSLATE_NOOP("TraceFile", "The file cannot be opened (%1)."))
            .arg(file.errorString());
    }
    // What is larger is refused by the reader, which says so.
    const QByteArray bytes = file.read(static_cast<qint64>(TraceLimits{}.mostBytes) + 1);
    if (file.error() != QFileDevice::NoError) {
        return translated(QT_TRANSLATE_NOOP("TraceFile", "The file cannot be read (%1)."))
            .arg(file.errorString());
    }
    ReadSnapshot snapshot(office.connection());
    auto basis = traceBasisOf(snapshot, office.entries(), cycle, office.now());
    if (!basis) {
        return translated(QT_TRANSLATE_NOOP("TraceFile", "Nothing is known of this load."));
    }
    TraceFile read;
    read.name = QFileInfo(path).fileName().toStdString();
    read.bytes = bytes.toStdString();
    read.basis = *std::move(basis);
    read.chosen = chooseMapping(read.bytes, read.basis.remembered);
    return read;
}

std::optional<TraceFile> keptTraceFile(Office& office, const std::string& cycle,
                                       const TraceRead& read)
{
    ReadSnapshot snapshot(office.connection());
    auto bytes = readAttachment(snapshot, read.content);
    auto basis = traceBasisOf(snapshot, office.entries(), cycle, office.now());
    const auto mapping = readTraceMapping(read.mapping);
    if (!bytes || !basis || !std::holds_alternative<TraceMapping>(mapping)) {
        return std::nullopt;
    }
    return TraceFile{read.fileName,
                     *std::move(bytes),
                     *std::move(basis),
                     {std::get<TraceMapping>(mapping), MappingOrigin::remembered, {}, {}},
                     true};
}

} // namespace loadwarden::ui
