#include "editor/places/sorted_table.h"

#include <algorithm>
#include <cctype>

namespace editor {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

char lowered(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lowered(std::string_view text) {
    std::string low(text);
    std::ranges::transform(low, low.begin(), [](char c) { return lowered(c); });
    return low;
}

// The digits that begin there, without zeros in front.
std::string_view number_at(std::string_view text, std::size_t& at) {
    while (at < text.size() && text[at] == '0') ++at;
    const std::size_t from = at;
    while (at < text.size() && is_digit(text[at])) ++at;
    return text.substr(from, at - from);
}

int compared(std::string_view a, std::string_view b) {
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() && j < b.size()) {
        if (is_digit(a[i]) && is_digit(b[j])) {
            const auto one = number_at(a, i);
            const auto other = number_at(b, j);
            if (one.size() != other.size()) return one.size() < other.size() ? -1 : 1;
            if (one != other) return one < other ? -1 : 1;
            continue;
        }
        const char one = lowered(a[i++]);
        const char other = lowered(b[j++]);
        if (one != other) return one < other ? -1 : 1;
    }
    const std::size_t left = a.size() - i;
    const std::size_t right = b.size() - j;
    return left == right ? 0 : left < right ? -1 : 1;
}

void sort(std::vector<std::size_t>& shown, const TableOrder& order) {
    if (!order.column) return;
    const auto is_in_order = [&](std::size_t a, std::size_t b) {
        const auto& one = order.lines[a].keys;
        const auto& other = order.lines[b].keys;
        if (*order.column >= one.size() || *order.column >= other.size()) return false;
        return order.is_downward ? is_before(other[*order.column], one[*order.column])
                                 : is_before(one[*order.column], other[*order.column]);
    };
    std::ranges::stable_sort(shown, is_in_order);
}

}  // namespace

bool is_before(const SortKey& a, const SortKey& b) {
    if (a.index() != b.index()) return a.index() < b.index();
    if (const auto* number = std::get_if<double>(&a)) return *number < std::get<double>(b);
    return compared(std::get<std::string>(a), std::get<std::string>(b)) < 0;
}

bool is_found(const std::string& words, std::string_view search) {
    const std::string low = lowered(words);
    std::size_t from = search.find_first_not_of(' ');
    while (from != std::string_view::npos) {
        const std::size_t end = std::min(search.find(' ', from), search.size());
        if (low.find(lowered(search.substr(from, end - from))) == std::string::npos) return false;
        from = search.find_first_not_of(' ', end);
    }
    return true;
}

void sort_by_next(TableOrder& order) {
    const std::size_t count = order.lines.empty() ? 0 : order.lines.front().keys.size();
    const std::size_t next = order.column ? *order.column + 1 : 0;
    order.wanted = WantedOrder{};
    if (next < count) order.wanted->column = next;
}

void turn_round(TableOrder& order) {
    if (order.column) order.wanted = WantedOrder{order.column, !order.is_downward};
}

void bring_up_to_date(TableOrder& order, const WorkedOutOf& of, const LineMaker& lines) {
    if (order.of != of) {
        order.lines = lines();
        order.columns.reset();
        order.of = of;
        order.searched.reset();
        order.anchor.reset();
    }
    put_in_order(order);
}

void put_in_order(TableOrder& order) {
    if (order.searched == order.search && order.sorted_by == order.column &&
        order.sorted_downward == order.is_downward) {
        return;
    }
    order.shown.clear();
    for (std::size_t i = 0; i < order.lines.size(); ++i) {
        if (is_found(order.lines[i].words, order.search)) order.shown.push_back(i);
    }
    sort(order.shown, order);
    order.searched = order.search;
    order.sorted_by = order.column;
    order.sorted_downward = order.is_downward;
}

Selection with_added(Selection selection, const Selection& more) {
    for (const auto& piece : more.pieces) {
        if (std::ranges::find(selection.pieces, piece) == selection.pieces.end())
            selection.pieces.push_back(piece);
    }
    for (const auto& subject : more.subjects) {
        if (std::ranges::find(selection.subjects, subject) == selection.subjects.end())
            selection.subjects.push_back(subject);
    }
    return selection;
}

Selection with_removed(Selection selection, const Selection& less) {
    std::erase_if(selection.pieces, [&](const PieceName& piece) {
        return std::ranges::find(less.pieces, piece) != less.pieces.end();
    });
    std::erase_if(selection.subjects, [&](const model::Subject& subject) {
        return std::ranges::find(less.subjects, subject) != less.subjects.end();
    });
    return selection;
}

}  // namespace editor
