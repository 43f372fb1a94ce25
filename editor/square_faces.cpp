#include "editor/square_faces.h"

#include "model/schedule/tables.h"

#include <cstddef>
#include <optional>

namespace editor {
namespace {

struct PlaneAt {
    std::size_t axis = 0;
    model::Nm position = 0;
};

std::optional<PlaneAt> plane_named(const std::string& name,
                                   const model::Frame& frame,
                                   const model::ResolvedFrame& placed) {
    for (std::size_t i = 0; i < frame.planes.size() && i < placed.planes.size(); ++i) {
        if (frame.planes[i].name != name || !placed.planes[i].position) continue;
        return PlaneAt{static_cast<std::size_t>(placed.planes[i].axis), *placed.planes[i].position};
    }
    return std::nullopt;
}

engine::Vector mm_in_room(const model::ResolvedFrame& placed, const model::Point& at) {
    const auto in_room = model::to_room(placed, at);
    engine::Vector mm{};
    for (std::size_t k = 0; k < 3; ++k) mm[k] = static_cast<double>(in_room[k]) / 1e6;
    return mm;
}

SquareFace face_of(const model::SquareRow& row, const Derived& derived) {
    SquareFace face{row};
    const auto& frame = derived.project->frames[row.frame];
    const auto& placed = derived.resolved.frames[row.frame];
    // Corner [i][j]: at the first or second plane across each of the two axes.
    std::array<std::array<model::Point, 2>, 2> corners{};
    const auto put = [&](const std::string& plane, auto takes) {
        const auto at = plane_named(plane, frame, placed);
        if (!at) return;
        for (std::size_t i = 0; i < 2; ++i) {
            for (std::size_t j = 0; j < 2; ++j) {
                if (takes(i, j)) corners[i][j][at->axis] = at->position;
            }
        }
    };
    put(row.face, [](std::size_t, std::size_t) { return true; });
    for (std::size_t end = 0; end < 2; ++end) {
        put(row.between[0][end], [&](std::size_t i, std::size_t) { return i == end; });
        put(row.between[1][end], [&](std::size_t, std::size_t j) { return j == end; });
    }
    face.diagonals = {{{mm_in_room(placed, corners[0][0]), mm_in_room(placed, corners[1][1])},
                       {mm_in_room(placed, corners[1][0]), mm_in_room(placed, corners[0][1])}}};
    return face;
}

}  // namespace

std::vector<SquareFace> square_faces(const Derived& derived) {
    std::vector<SquareFace> faces;
    for (const auto& row : model::square_rows(*derived.project, derived.resolved))
        faces.push_back(face_of(row, derived));
    return faces;
}

std::string between_words(const model::SquareRow& row) {
    return row.between[0][0] + " to " + row.between[0][1] + ", " + row.between[1][0] + " to " +
           row.between[1][1];
}

std::array<MeasuredLine, 2> lines_of(const SquareFace& face, const Derived& derived) {
    const std::string name = "diagonal of " + face.row.face;
    const auto text = model::length_text(*derived.project, face.row.diagonal);
    const auto& [one, other] = face.diagonals;
    return {{{name, one[0], one[1], text}, {name + ", other", other[0], other[1], ""}}};
}

}  // namespace editor
