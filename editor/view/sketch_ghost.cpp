#include "editor/view/sketch_ghost.h"

#include "model/resolve/piece_mesh.h"

#include <glm/common.hpp>

namespace editor {
namespace {

// Marking-out dye, light enough for the dark paper and dark enough for the bright one.
constexpr engine::ItemLook bar_look{
    engine::no_pick, {0x4F, 0x6C, 0xD6, 0x9C}, {0x3F, 0x5A, 0xC8, 0xFF}};
constexpr engine::ItemLook space_look{
    engine::no_pick, {0x5B, 0x78, 0xE0, 0x2C}, {0x4F, 0x6C, 0xD6, 0xFF}};

engine::SceneBounds box_between(const PlaneGrid& grid,
                                const model::Point& a,
                                const model::Point& b) {
    const auto from = in_room(grid, a);
    const auto to = in_room(grid, b);
    return {glm::min(from, to), glm::max(from, to)};
}

}  // namespace

Ghost ghost_of_pieces(const model::Resolved& resolved,
                      const model::Catalogue& catalogue,
                      const std::vector<model::Index>& pieces) {
    if (pieces.empty()) return nullptr;
    auto batch = std::make_shared<engine::SceneBatch>();
    model::PieceMesher mesher{resolved, catalogue};
    for (const auto piece : pieces) {
        mesher.append(batch->mesh, piece);
        engine::close_item(*batch, bar_look);
    }
    return batch;
}

Ghost ghost_of_cells(const PlaneGrid& grid, const std::vector<GridCell>& cells) {
    auto batch = std::make_shared<engine::SceneBatch>();
    for (const auto& cell : cells) {
        GridNode most = cell.least;
        for (auto& i : most) ++i;
        auto box = box_between(grid, point_of(grid, cell.least), point_of(grid, most));
        // A little smaller, so that no face lies in that of a bar.
        constexpr double in = 2.0;  // mm
        box.lo += in;
        box.hi -= in;
        engine::append_box(batch->mesh, box);
        engine::close_item(*batch, space_look);
    }
    return batch;
}

Ghost ghost_of_plane(const PlaneGrid& grid, model::Axis axis, model::Nm at) {
    model::Point lo{};
    model::Point hi{};
    for (std::size_t k = 0; k < 3; ++k) {
        lo[k] = grid.planes[k].front().at;
        hi[k] = grid.planes[k].back().at;
    }
    lo[model::index_of(axis)] = at;
    hi[model::index_of(axis)] = at;
    auto batch = std::make_shared<engine::SceneBatch>();
    engine::append_box(batch->mesh, box_between(grid, lo, hi));
    engine::close_item(*batch, space_look);
    return batch;
}

}  // namespace editor
