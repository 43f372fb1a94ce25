// Where what runs from node to node of a face touches the members there, and the shims it needs.
#pragma once

#include "model/resolve/brace_face.h"
#include "model/resolve/brace_line.h"
#include "model/resolve/part_maker.h"

#include <vector>

namespace model {

// A piece of the skeleton that lies against a face.
struct LyingPiece {
    Index piece = 0;
    FlatPolygon polygon;  // of its wall in the face
    Nm surface = 0;       // where that touches what it lies on
};

class FaceLaps {
public:
    // `tree` is over the extents of the pieces that were there before. All must outlive it.
    FaceLaps(const PartRoom& room,
             FrameSkeleton& skeleton,
             const engine::BoxTree& tree,
             const Resolved& out,
             std::vector<Lap>& laps)
        : room_{room}, s_{skeleton}, tree_{tree}, out_{out}, laps_{laps} {}

    // The laps of the frame that the piece covers say so; its own are kept until `put_in`.
    void find(const BraceLine& line, const BraceFace& face, const LyingPiece& lying);

    // Puts the laps found behind those of the frame: those in which walls touch, then those that
    // need a shim, which keep off all that leans.
    void put_in();

private:
    void cover_laps(const BraceLine& line, const LyingPiece& lying);
    void find_lap(const BraceLine& line,
                  const BraceFace& face,
                  const LyingPiece& lying,
                  const FaceWall& wall);
    bool keep_free_part(Lap& lap) const;
    bool cut_to_marks(Lap& lap) const;
    bool keep_off_leaning(Lap& lap) const;
    bool keep_off_slices(const Piece& leaning, Lap& lap) const;
    void keep_shims_off_leaning();
    bool leans(const Piece& piece) const { return piece.lean != no_index; }

    const PartRoom& room_;
    FrameSkeleton& s_;
    const engine::BoxTree& tree_;
    const Resolved& out_;
    std::vector<Lap>& laps_;
    std::vector<Lap> touching_;
    std::vector<Lap> shimmed_;
};

// What a piece in the face laps of a wall there, however deep that lies.
FlatPolygon lapped_part(const FlatPolygon& polygon, const FrameSkeleton& skeleton, const FaceWall&);

}  // namespace model
