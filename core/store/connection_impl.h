#pragma once

#include "core/store/connection.h"
#include "core/store/prepared_statement.h"

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loadwarden {

/// The part of a connection that knows the engine; for core/store's own .cpp files.
struct Connection::Impl {
    struct TextHash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const
        {
            return std::hash<std::string_view>{}(text);
        }
    };

    QString name;
    QSqlDatabase database;
    sqlite3* sqlite = nullptr; ///< of `database`, where it may be used without Qt
    /// Prepared statements that nobody uses now, by their text: preparing one costs several times
    /// what running it does.
    std::unordered_map<std::string, std::vector<std::unique_ptr<PreparedStatement>>, TextHash,
                       std::equal_to<>>
        idle;
    /// A statement failed since the transaction began: it can no longer be committed. PostgreSQL
    /// would answer its COMMIT by undoing it, without a word.
    bool failed = false;
};

[[nodiscard]] StoreError engineError(const Dialect& dialect, const QSqlError& error,
                                     std::string_view sql);

} // namespace loadwarden
