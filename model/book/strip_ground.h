// Where words can lie on a paper of a drill strip: on the piece, clear of crosses, of lines that
// papers share, of cut edges, and of other words.
#pragma once

#include "model/book/free_place.h"
#include "model/book/strip_paper.h"
#include "model/book/strip_words.h"

#include <optional>
#include <vector>

namespace model {

class StripGround {
public:
    StripGround(const StripPart& part, const StripPaper& paper);

    void block(const engine::PageBox& box, double around);
    std::optional<engine::PageBox> free_place_in(const engine::PageBox& area, BoxSize size) const;

private:
    void block_crosses();
    void block_joints(const StripTile& tile);
    bool is_on_piece(const engine::PageBox& box) const;

    const UnrolledPiece& flat_;
    const StripPaper& paper_;
    std::vector<UnrolledEdge> edges_;  // that are cut otherwise than square; else none
    std::vector<engine::PageBox> blocked_;
};

}  // namespace model
