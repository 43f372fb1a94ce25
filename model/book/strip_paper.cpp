#include "model/book/strip_paper.h"

namespace model {

engine::PageBox StripPaper::leg(std::size_t i) const {
    const double left = x(wall(i).left());
    return {left, 0.0, x(wall(i).right()) - left, height()};
}

std::vector<StripHole> StripPaper::holes() const {
    std::vector<StripHole> all;
    for (std::size_t i = 0; i < flat_.holes.size(); ++i) {
        const auto& hole = flat_.holes[i];
        const bool is_on_it = hole.wall >= tile_.first_wall &&
                              hole.wall < tile_.first_wall + tile_.wall_count &&
                              hole.down > tile_.from && hole.down < tile_.to;
        if (!is_on_it) continue;
        all.push_back({i,
                       hole.wall - tile_.first_wall,
                       {x(hole.across), y(hole.down)},
                       hole.diameter / 2 / printer_.across});
    }
    return all;
}

}  // namespace model
