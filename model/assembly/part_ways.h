// Which pieces of a frame stop which others on their way out, by direction. Only files of this
// folder use it.
#pragma once

#include "model/assembly/frame_parts.h"
#include "model/assembly/piece_bodies.h"

#include <array>
#include <cstddef>
#include <vector>

namespace model {

// The ways are the axes of the frame, both senses of each, and the directions along and across
// each piece that leans.
class PartWays {
public:
    explicit PartWays(const FrameParts& parts);

    std::size_t count() const { return directions_.size(); }
    const std::array<double, 3>& direction(std::size_t way) const { return directions_[way]; }

    // What a piece runs into when it alone moves out that way, however far.
    const PieceSet& stops(std::size_t way, Index piece) const { return stops_[way][piece]; }

    const std::vector<PieceBody>& bodies(Index piece) const { return bodies_[piece]; }

private:
    void add_lines(const FrameParts& parts);
    void add_pair(const FrameParts& parts, Index a, Index b);
    void add_boxes(Index a, Index b);
    void add_solids(Index a, Index b);
    void stop(std::size_t way, Index piece, Index by) { stops_[way][piece].insert(by); }

    std::vector<std::array<double, 3>> directions_;  // each line's two senses together
    std::vector<std::vector<PieceBody>> bodies_;
    std::vector<bool> is_boxes_;  // by piece: all its bodies are
    std::vector<std::vector<PieceSet>> stops_;
};

}  // namespace model
