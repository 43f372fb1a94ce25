#include "engine/drawing/paper.h"

#include <algorithm>
#include <array>

namespace engine {
namespace {

struct PaperRow {
    Paper paper;
    std::string_view name;
    PaperSize upright;  // mm
};

// A4 and A3: ISO 216:2007, trimmed sizes of the A series. Letter and tabloid: sizes A (8 1/2 x 11
// in) and B (11 x 17 in) of ANSI/ASME Y14.1. Both from memory.
constexpr std::array<PaperRow, 4> paper_rows{{
    {Paper::a4, "a4", {210.0, 297.0}},
    {Paper::a3, "a3", {297.0, 420.0}},
    {Paper::letter, "letter", {215.9, 279.4}},
    {Paper::tabloid, "tabloid", {279.4, 431.8}},
}};

const PaperRow& row_of(Paper paper) {
    return *std::find_if(paper_rows.begin(), paper_rows.end() - 1,
                         [&](const PaperRow& row) { return row.paper == paper; });
}

constexpr char small_letter(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

PaperSize paper_size(Paper paper, PaperTurn turn) {
    const PaperSize upright = row_of(paper).upright;
    if (turn == PaperTurn::portrait) return upright;
    return {upright.height, upright.width};
}

std::string_view name_of(Paper paper) { return row_of(paper).name; }

std::optional<Paper> paper_named(std::string_view name) {
    const auto is_same = [](char typed, char own) { return small_letter(typed) == own; };
    for (const PaperRow& row : paper_rows) {
        if (std::equal(name.begin(), name.end(), row.name.begin(), row.name.end(), is_same))
            return row.paper;
    }
    return std::nullopt;
}

}  // namespace engine
