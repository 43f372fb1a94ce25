#include "editor/kit/widgets.h"
#include "editor/places/prove_sheets.h"
#include "editor/places/table_columns.h"
#include "model/schedule/tables.h"

#include <string>
#include <utility>

namespace editor {
namespace {

const std::vector<SquareFace>& faces_of(const Derived& derived, ProveState& state) {
    auto& memo = state.faces;
    const auto of = worked_out_of(derived);
    if (memo.of != of) {
        const auto before = std::move(memo.rows);
        memo = {of, 0.0, square_faces(derived)};
        keep_same_row(state.shown_row, before, memo.rows,
                      [](const SquareFace& a, const SquareFace& b) {
                          return a.row.frame == b.row.frame && a.row.face == b.row.face &&
                                 a.row.between == b.row.between;
                      });
    }
    return memo.rows;
}

std::string size_words(const SquareFace& face, const Derived& derived) {
    return model::length_text(*derived.project, face.row.size[0]) + " x " +
           model::length_text(*derived.project, face.row.size[1]);
}

std::string diagonal_words(const SquareFace& face, const Derived& derived) {
    return model::length_text(*derived.project, face.row.diagonal);
}

std::string frame_of(const SquareFace& face, const Derived& derived) {
    return derived.project->frames[face.row.frame].name;
}

TableLine line_of(const SquareFace& face, const Derived& derived) {
    return {frame_of(face, derived) + " " + face.row.face + " " + between_words(face.row) + " " +
                size_words(face, derived) + " " + diagonal_words(face, derived),
            {frame_of(face, derived), face.row.face, face.row.size[0].mm() * face.row.size[1].mm(),
             face.row.diagonal.mm()}};
}

bool draw_face(const LineAt& at, const SquareFace& face, const Derived& derived) {
    const std::string name = "face " + std::to_string(at.line + 1);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool clicked = draw_row(name, " ", at.is_marked, true).clicked;
    log_item(name, diagonal_words(face, derived));
    draw_hint(between_words(face.row) + ". Click to see both diagonals");
    ImGui::SameLine(0, 0);
    draw_text(text_to_fit(frame_of(face, derived), Type::text, ImGui::GetContentRegionAvail().x));
    ImGui::TableNextColumn();
    draw_text(text_to_fit(face.row.face, Type::text, ImGui::GetContentRegionAvail().x));
    ImGui::TableNextColumn();
    draw_text_right(size_words(face, derived), colour::quiet);
    ImGui::TableNextColumn();
    draw_text_right(diagonal_words(face, derived));
    return clicked;
}

Selection chosen_by(const SquareFace& face, const Derived& derived) {
    return choice_of(derived, {},
                     {{model::SubjectKind::plane, frame_of(face, derived), face.row.face}});
}

void draw_table(const std::vector<SquareFace>& faces,
                const Derived& derived,
                ProveState& state,
                Selection& selection) {
    const TableScope table("square", 4, sorted_table_flags);
    if (!table) return;
    ColumnWidth size{"Outside"};
    ColumnWidth diagonal{"Both diagonals"};
    for (const auto& face : faces) {
        size.add(size_words(face, derived));
        diagonal.add(diagonal_words(face, derived));
    }
    ImGui::TableSetupColumn("Frame", ImGuiTableColumnFlags_WidthStretch, 1.0F, 1);
    ImGui::TableSetupColumn("Face", ImGuiTableColumnFlags_WidthStretch, 1.0F, 2);
    size.set_up(3);
    diagonal.set_up(4);
    draw_heads(state.square);
    std::optional<std::size_t> clicked;
    draw_lines(state.square, selection,
               {[&](std::size_t line) {
                    return state.shown_row ? state.shown_row == line
                                           : has_subject(selection, {model::SubjectKind::plane,
                                                                     frame_of(faces[line], derived),
                                                                     faces[line].row.face});
                },
                [&](std::size_t line) {
                    clicked = line;
                    return chosen_by(faces[line], derived);
                },
                [&](const LineAt& at) { return draw_face(at, faces[at.line], derived); }});
    if (clicked) state.shown_row = clicked;
}

}  // namespace

void draw_square(const Derived& derived, ProveState& state, Selection& selection) {
    const auto& faces = faces_of(derived, state);
    if (faces.empty()) {
        draw_wrapped("No frame has a rectangular face whose four corners a tape would find.",
                     Type::small, colour::quiet);
        log_item("no faces");
        return;
    }
    draw_wrapped(
        "Dry-fit with pins, then measure both diagonals of a face over the outside corners. Alike: "
        "it is square. Else push the longer one shorter before the first rivet.",
        Type::small, colour::quiet);
    bring_up_to_date(state.square, worked_out_of(derived), [&] {
        std::vector<TableLine> lines;
        for (const auto& face : faces) lines.push_back(line_of(face, derived));
        return lines;
    });
    draw_search("Find", state.square);
    draw_table(faces, derived, state, selection);
}

}  // namespace editor
