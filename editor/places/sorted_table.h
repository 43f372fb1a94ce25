// Tables that can be searched by one field above them and sorted by a click on a column's head, and
// whose lines choose what the view shows as chosen.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/selection.h"

#include <any>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace editor {

// Numbers and lengths sort as numbers. Words sort by their letters, large and small alike, with the
// numbers in them as numbers: A2 before A10.
using SortKey = std::variant<double, std::string>;

bool is_before(const SortKey& a, const SortKey& b);

// What a line is found by and sorted by.
struct TableLine {
    std::string words;          // of all its columns
    std::vector<SortKey> keys;  // by column
};

// Whether each word of the search, large or small letters alike, is somewhere in the words.
bool is_found(const std::string& words, std::string_view search);

struct WantedOrder {
    std::optional<std::size_t> column;
    bool is_downward = false;
};

// What was made of a table, and what follows from that.
struct TableOrder {
    std::string search;
    std::optional<std::size_t> column;  // that it is sorted by; none: as it comes
    bool is_downward = false;           // the greatest first
    bool wants_search = false;          // the field is to have the keyboard
    std::optional<WantedOrder> wanted;  // by the keyboard
    int step = 0;                       // lines further down that the keyboard chooses

    // Worked out once for each state of the project, search and order.
    std::optional<WorkedOutOf> of;
    std::vector<TableLine> lines;
    std::optional<std::string> searched;
    std::optional<std::size_t> sorted_by;
    bool sorted_downward = false;
    std::vector<std::size_t> shown;  // indices of lines, in their order
    std::any columns;                // how wide they are, see kept_columns ...
    float columns_text_size = 0.0F;  // ... at this size of the text

    Selection seen;                     // as it was when this table was drawn last
    std::optional<std::size_t> anchor;  // the line that was clicked last
};

using LineMaker = std::function<std::vector<TableLine>()>;

// By the next column, and behind the last one as it comes; the other way round.
void sort_by_next(TableOrder& order);
void turn_round(TableOrder& order);

// Brings `shown` up to date. The order of lines that are alike in the column stays as it was.
void bring_up_to_date(TableOrder& order, const WorkedOutOf& of, const LineMaker& lines);

// The same for lines that stayed as they were.
void put_in_order(TableOrder& order);

// Columns as `measure` gives them, measured where the lines or the text's size changed: long tables
// have tens of thousands of texts. For an order that is up to date.
template <class Measure>
const auto& kept_columns(TableOrder& order, const Measure& measure) {
    using Columns = decltype(measure());
    const float size = ImGui::GetFontSize();
    if (order.columns_text_size != size || std::any_cast<Columns>(&order.columns) == nullptr) {
        order.columns = measure();
        order.columns_text_size = size;
    }
    return *std::any_cast<Columns>(&order.columns);
}

// The field above a table, and beside it how many lines are shown of how many.
void draw_search(std::string_view name, TableOrder& order);

// The heads of the table's columns; a column with an id (from 1) is sorted by key id - 1. Three
// clicks: upward, downward, as it comes.
void draw_heads(TableOrder& order);

// Flags of such a table.
inline constexpr ImGuiTableFlags sorted_table_flags =
    ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_RowBg |
    ImGuiTableFlags_Sortable | ImGuiTableFlags_SortTristate;

struct LineAt {
    std::size_t line = 0;
    std::optional<std::size_t> before;  // the line shown above it; none at the top of what is seen
    bool is_marked = false;
};

struct LineHands {
    std::function<bool(std::size_t line)> is_marked;       // something of it is chosen
    std::function<Selection(std::size_t line)> chosen_by;  // what a click on it chooses
    std::function<bool(const LineAt&)> draw;               // whether it was clicked
};

// Draws what is to be seen of them. A click chooses a line, with Ctrl adds it or takes it away,
// with Shift adds all from the line that was clicked before. What was chosen elsewhere is scrolled
// to.
void draw_lines(TableOrder& order, Selection& selection, const LineHands& hands);

// What is chosen with `more` added, each once.
Selection with_added(Selection selection, const Selection& more);
Selection with_removed(Selection selection, const Selection& less);

}  // namespace editor
