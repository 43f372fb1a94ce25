#include "model/schedule/square.h"

#include "engine/files/csv.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/face_corners.h"
#include "model/schedule/length_texts.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

SquareRow row_of(Index frame, const std::string& plane, const SideOfBay& side) {
    SquareRow row{.frame = frame, .face = plane, .between = side.planes};
    std::array<double, 2> size{};
    for (std::size_t k = 0; k < 2; ++k) {
        row.size[k] = Length::from_nm(side.span[k][1] - side.span[k][0]);
        size[k] = static_cast<double>(row.size[k].nm());
    }
    row.diagonal = Length::from_nm(std::llround(std::hypot(size[0], size[1])));
    return row;
}

}  // namespace

std::vector<SquareRow> square_rows(const Project& project, const Resolved& resolved) {
    std::vector<SquareRow> rows;
    for (Index f = 0; f < project.frames.size() && f < resolved.frames.size(); ++f) {
        const FaceCorners corners{project.frames[f], resolved, resolved.frames[f]};
        for (const auto& [key, here] : outside_of(project.frames[f], resolved.frames[f])) {
            for (const auto& side : here.sides) {
                const auto found = corners.measurable(std::get<0>(key), std::get<1>(key), side);
                if (!found) continue;
                auto row = row_of(f, here.plane, *found);
                if (std::ranges::find(rows, row) == rows.end()) rows.push_back(std::move(row));
            }
        }
    }
    return rows;
}

// Sheared by 1/8 in, its diagonals come to differ by 1/8 in times twice its width over its
// diagonal: by less than a mark of 1/32 in where it is narrower than this. Plane geometry.
bool do_diagonals_tell(const std::array<Nm, 2>& size) {
    const auto width = static_cast<double>(size[0]);
    const auto height = static_cast<double>(size[1]);
    const double narrow = std::min(width, height);
    return narrow > 0.0 && 8.0 * narrow >= std::hypot(width, height);
}

std::string square_csv(const Project& project, const std::vector<SquareRow>& rows) {
    engine::CsvText text{"frame",  "face",     "across",   "up",        "width",
                         "height", "diagonal", "width_mm", "height_mm", "diagonal_mm"};
    LengthTexts shown{project.shown};
    const auto pair = [](const std::array<std::string, 2>& planes) {
        return planes[0] + " to " + planes[1];
    };
    for (const auto& row : rows) {
        text.row({project.frames[row.frame].name, row.face, pair(row.between[0]),
                  pair(row.between[1]), shown(row.size[0]), shown(row.size[1]), shown(row.diagonal),
                  decimal_mm(row.size[0]), decimal_mm(row.size[1]), decimal_mm(row.diagonal)});
    }
    return std::move(text).take();
}

}  // namespace model
