#include "ui/records/records_model.h"

#include "ui/look/text.h"
#include "ui/records/record_text.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int rowsAhead = 60;   ///< that are there before they are seen
constexpr int looksAtOnce = 40; ///< one after the other, before somebody has to ask for more
constexpr int chunksKept = 8;   ///< before and behind what is seen

} // namespace

RecordsModel::RecordsModel(Source source, NameOf nameOf, QObject* parent)
    : QAbstractTableModel(parent), m_source(std::move(source)), m_nameOf(std::move(nameOf))
{
}

void RecordsModel::search()
{
    beginResetModel();
    ++m_search;
    m_chunks.clear();
    m_kept.clear();
    m_place = {};
    m_rows = 0;
    m_firstSeen = 0;
    m_lastSeen = 0;
    m_looksLeft = looksAtOnce;
    m_isLooking = false;
    m_isFilling = false;
    m_isEnd = false;
    m_hasStopped = false;
    m_isByTime = false;
    m_hasLooked = false;
    endResetModel();
    look();
}

void RecordsModel::refresh()
{
    if (m_isLooking || m_isRefreshing) {
        return;
    }
    m_isRefreshing = true;
    m_source({}, [this, search = m_search](std::optional<RecordPage> page) {
        m_isRefreshing = false;
        if (search != m_search || !page) {
            return;
        }
        const bool isSame = m_chunks.empty() ? page->rows.empty()
                                             : m_chunks.front().behind == CyclePlace{}
                                                   && m_chunks.front().rows == page->rows;
        if (!isSame) {
            this->search();
        }
    });
}

void RecordsModel::goOn()
{
    m_looksLeft = looksAtOnce;
    m_hasStopped = false;
    look();
}

void RecordsModel::showing(int first, int last)
{
    m_firstSeen = std::max(first, 0);
    m_lastSeen = std::max(last, m_firstSeen);
    letGo();
    fill();
    if (m_lastSeen + rowsAhead >= m_rows && canFetchMore({})) {
        fetchMore({});
    }
}

bool RecordsModel::canFetchMore(const QModelIndex& parent) const
{
    return !parent.isValid() && !m_isEnd && !m_hasStopped && !m_isLooking;
}

void RecordsModel::fetchMore(const QModelIndex& parent)
{
    if (canFetchMore(parent)) {
        m_looksLeft = looksAtOnce;
        look();
    }
}

void RecordsModel::look()
{
    if (m_isLooking || m_isEnd) {
        return;
    }
    m_isLooking = true;
    --m_looksLeft;
    emit looked();
    m_source(m_place, [this, search = m_search, behind = m_place](std::optional<RecordPage> page) {
        if (search == m_search) {
            came(behind, std::move(page));
        }
    });
}

void RecordsModel::came(const CyclePlace& behind, std::optional<RecordPage> page)
{
    m_isLooking = false;
    if (!page) {
        m_hasStopped = true;
        emit looked();
        return;
    }
    m_hasLooked = m_hasLooked || page->last != behind || page->isEnd;
    m_place = page->last;
    m_isEnd = page->isEnd;
    m_isByTime = page->isByTime;
    const auto count = static_cast<int>(page->rows.size());
    if (count > 0) {
        beginInsertRows({}, m_rows, m_rows + count - 1);
        m_chunks.push_back({.behind = behind,
                            .last = page->last,
                            .first = m_rows,
                            .count = count,
                            .rows = std::move(page->rows)});
        m_kept.push_back(m_chunks.size() - 1);
        m_rows += count;
        endInsertRows();
    }
    if (!m_isEnd && m_lastSeen + rowsAhead >= m_rows) {
        if (m_looksLeft > 0) {
            look();
            return;
        }
        m_hasStopped = true;
    }
    emit looked();
}

std::size_t RecordsModel::chunkOf(int row) const
{
    const auto behind = std::ranges::upper_bound(m_chunks, row, {}, &Chunk::first);
    return static_cast<std::size_t>(behind - m_chunks.begin()) - 1;
}

void RecordsModel::letGo()
{
    if (m_chunks.empty()) {
        return;
    }
    const auto first = static_cast<std::ptrdiff_t>(chunkOf(std::min(m_firstSeen, m_rows - 1)));
    const auto last = static_cast<std::ptrdiff_t>(chunkOf(std::min(m_lastSeen, m_rows - 1)));
    std::erase_if(m_kept, [&](std::size_t chunk) {
        const auto i = static_cast<std::ptrdiff_t>(chunk);
        const bool isFar = i < first - chunksKept || i > last + chunksKept;
        // The newest are kept to see whether there are newer ones.
        if (isFar && chunk != 0) {
            m_chunks[chunk].rows = {};
        }
        return isFar && chunk != 0;
    });
}

void RecordsModel::fill()
{
    if (m_isFilling || m_chunks.empty()) {
        return;
    }
    const std::size_t last = chunkOf(std::min(m_lastSeen, m_rows - 1));
    for (std::size_t i = chunkOf(std::min(m_firstSeen, m_rows - 1)); i <= last; ++i) {
        if (!m_chunks[i].rows.empty()) {
            continue;
        }
        m_isFilling = true;
        m_source(m_chunks[i].behind, [this, i, search = m_search](std::optional<RecordPage> page) {
            if (search == m_search) {
                filled(i, std::move(page));
            }
        });
        return;
    }
}

void RecordsModel::filled(std::size_t chunk, std::optional<RecordPage> page)
{
    m_isFilling = false;
    if (!page) {
        return;
    }
    Chunk& mine = m_chunks[chunk];
    if (static_cast<int>(page->rows.size()) != mine.count || page->last != mine.last) {
        search(); // something was recorded that began among these
        return;
    }
    mine.rows = std::move(page->rows);
    m_kept.push_back(chunk);
    emit dataChanged(index(mine.first, 0), index(mine.first + mine.count - 1, columns - 1));
    fill();
}

const RecordRow* RecordsModel::at(int row) const
{
    if (row < 0 || row >= m_rows) {
        return nullptr;
    }
    const Chunk& chunk = m_chunks[chunkOf(row)];
    return chunk.rows.empty() ? nullptr : &chunk.rows[static_cast<std::size_t>(row - chunk.first)];
}

std::optional<Instant> RecordsModel::lookedBackTo() const
{
    return m_hasLooked && m_place.at != INT64_MAX ? std::optional(Instant{m_place.at})
                                                  : std::nullopt;
}

int RecordsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : m_rows;
}

int RecordsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columns;
}

QString RecordsModel::textOf(const RecordRow& row, int column) const
{
    switch (column) {
    case when: return text(sayTime(row.at, m_style));
    case sterilizer: return m_nameOf(row.sterilizer);
    case lot: return text(row.lot);
    case what: return whatText(row);
    case signedAs: return signedText(row);
    case signedBy: return row.signedBy.empty() ? QString() : m_nameOf(row.signedBy);
    default: return {};
    }
}

QVariant RecordsModel::data(const QModelIndex& index, int role) const
{
    const bool isText =
        role == Qt::DisplayRole || role == Qt::ToolTipRole || role == Qt::AccessibleTextRole;
    if (!checkIndex(index, CheckIndexOption::IndexIsValid) || !isText) {
        return {};
    }
    const RecordRow* const row = at(index.row());
    return row == nullptr ? QVariant(tr("…", "a row that is being asked for"))
                          : QVariant(textOf(*row, index.column()));
}

QVariant RecordsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case when: return tr("Began");
    case sterilizer: return tr("Sterilizer");
    case lot: return tr("Lot number");
    case what: return tr("What");
    case signedAs: return tr("Signed");
    case signedBy: return tr("By");
    default: return {};
    }
}

} // namespace loadwarden::ui
