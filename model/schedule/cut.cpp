#include "engine/files/csv.h"
#include "model/resolve/sheet_size.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/end_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace model {
namespace {

void append_listed(std::string& list, std::string_view item) {
    if (!list.empty()) list += "; ";
    list += item;
}

// The names of the frames, each once.
std::string frame_list(const MarkGroup& group, const Resolved& resolved, const PieceWords& words) {
    std::string list;
    Index last = no_index;  // the pieces of a frame stand together
    for (const auto piece : group.pieces) {
        if (resolved.pieces[piece].frame == last) continue;
        last = resolved.pieces[piece].frame;
        append_listed(list, words.frame(piece));
    }
    return list;
}

// With the frame's name in front where the mark serves several frames.
std::string member_list(const MarkGroup& group, const Resolved& resolved, const PieceWords& words) {
    const bool is_in_one_frame =
        resolved.pieces[group.pieces.front()].frame == resolved.pieces[group.pieces.back()].frame;
    std::string list;
    for (const auto piece : group.pieces) {
        const auto member = words.member(piece);
        append_listed(list, is_in_one_frame ? member : words.frame(piece) + ": " + member);
    }
    return list;
}

}  // namespace

std::vector<CutRow> cut_rows(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved) {
    const PieceWords words{project, catalogue, resolved};
    std::vector<CutRow> rows;
    for (auto& group : pieces_by_mark(resolved)) {
        const auto pattern = group.pieces.front();
        const auto& piece = resolved.pieces[pattern];
        auto ends = told_end_words(project, catalogue, resolved, piece);
        rows.push_back({.mark = group.mark,
                        .hand = group.hand,
                        .quantity = static_cast<int>(group.pieces.size()),
                        .kind = piece.kind,
                        .section = words.section(pattern),
                        .alloy = std::string(words.alloy(pattern)),
                        .length = engine::Length::from_nm(piece.length),
                        .width = engine::Length::from_nm(
                            is_of_sheet(piece.kind) ? sheet_width(resolved, piece) : 0),
                        .end_a = std::move(ends[0]),
                        .end_b = std::move(ends[1]),
                        .frames = frame_list(group, resolved, words),
                        .members = member_list(group, resolved, words),
                        .pieces = std::move(group.pieces)});
    }
    return rows;
}

std::string cut_csv(const Project& project,
                    const Resolved& resolved,
                    const std::vector<CutRow>& rows) {
    engine::CsvText text{"mark",      "hand",  "quantity", "kind",  "section", "alloy", "length",
                         "length_mm", "width", "width_mm", "end_a", "end_b",   "frame", "members"};
    LengthTexts shown{project.shown};
    for (const auto& row : rows) {
        const bool is_sheet = is_of_sheet(row.kind);
        text.row({resolved.marks[row.mark].name, name_of(row.hand), std::to_string(row.quantity),
                  name_of(row.kind), row.section, row.alloy, shown(row.length),
                  decimal_mm(row.length), is_sheet ? shown(row.width) : "",
                  is_sheet ? decimal_mm(row.width) : "", row.end_a, row.end_b, row.frames,
                  row.members});
    }
    return std::move(text).take();
}

std::string length_text(const Project& project, engine::Length length) {
    return shown_text(length, project.shown);
}

}  // namespace model
