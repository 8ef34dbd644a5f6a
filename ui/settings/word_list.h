#pragma once

#include "core/quantities/word.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"

#include <QComboBox>

#include <cstddef>

namespace loadwarden::ui {

/// A list of all values of a term, in the order of its words, as the trade says them.
template <class Value, std::size_t count>
[[nodiscard]] QComboBox* makeWordList(const Word<Value> (&words)[count])
{
    auto* const list = new QComboBox;
    for (const Word<Value>& word : words) {
        list->addItem(text(say(word.value)), static_cast<int>(word.value));
    }
    return list;
}

template <class Value>
void choose(QComboBox* list, Value value)
{
    list->setCurrentIndex(list->findData(static_cast<int>(value)));
}

/// What is chosen in a list of makeWordList().
template <class Value>
[[nodiscard]] Value chosenIn(const QComboBox* list)
{
    return static_cast<Value>(list->currentData().toInt());
}

} // namespace loadwarden::ui
