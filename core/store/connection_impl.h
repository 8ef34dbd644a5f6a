#pragma once

#include "core/store/connection.h"

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>

#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace loadwarden {

/// A statement that the engine has prepared.
struct PreparedQuery {
    QSqlQuery query;
    /// The binds by which it was asked for, as Qt takes them.
    std::vector<std::pair<std::string, QString>> names;
};

/// The part of a connection that knows Qt; for core/store's own .cpp files.
struct Connection::Impl {
    QString name;
    QSqlDatabase database;
    /// Prepared statements that nobody uses now, by their text: preparing one costs several times
    /// what running it does.
    std::unordered_map<std::string, std::vector<PreparedQuery>> idle;
    /// A statement failed since the transaction began: it can no longer be committed. PostgreSQL
    /// would answer its COMMIT by undoing it, without a word.
    bool failed = false;
};

[[nodiscard]] StoreError engineError(const Dialect& dialect, const QSqlError& error,
                                     std::string_view sql);

} // namespace loadwarden
