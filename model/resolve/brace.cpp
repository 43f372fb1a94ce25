#include "model/resolve/brace.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/brace_place.h"
#include "model/resolve/face_laps.h"

#include <cmath>
#include <utility>

namespace model {
namespace {

class Braces {
public:
    Braces(const PartRoom& room,
           FrameSkeleton& skeleton,
           const Frame& frame,
           const ResolvedFrame& placed,
           Resolved& out,
           std::vector<Lap>& laps)
        : room_{room},
          s_{skeleton},
          frame_{frame},
          placed_{placed},
          out_{out},
          laps_{laps},
          tree_{tree_of_pieces(skeleton)},
          face_laps_{room_, skeleton, tree_, out, laps} {}

    void add_all() {
        for (Index i = 0; i < frame_.diagonals.size(); ++i) add(i);
        face_laps_.put_in();
    }

private:
    Subject subject_of(const BraceLine& line) const {
        return {SubjectKind::diagonal, frame_.name, frame_.diagonals[line.stated].name};
    }

    void add(Index stated) {
        const auto line = brace_line(room_, frame_, placed_, stated, out_.findings);
        if (!line) return;
        const auto face = brace_face(*line, s_, laps_);
        if (!face) {
            out_.findings.push_back(
                brace_without_face(subject_of(*line), frame_.diagonals[stated].face));
            return;
        }
        auto placed = place_brace(room_, s_, {out_.outlines, out_.leans}, tree_, *line, *face);
        if (!placed) {
            const auto& [from, to] = line->nodes;
            const double apart = std::hypot(static_cast<double>(to[0] - from[0]),
                                            static_cast<double>(to[1] - from[1]));
            out_.findings.push_back(
                brace_without_room(subject_of(*line), Length::from_nm(std::llround(apart))));
            return;
        }
        brace_ = std::move(*placed);
        stand();
        face_laps_.find(*line, *face,
                        {static_cast<Index>(s_.pieces.size() - 1), brace_.polygon, brace_.surface});
    }

    void stand() {
        brace_.piece.lean = static_cast<Index>(out_.leans.size());
        out_.leans.push_back(brace_.lean);
        brace_.piece.plates[0].outline = static_cast<Index>(out_.outlines.size());
        out_.outlines.push_back(brace_.outline);
        s_.pieces.push_back(brace_.piece);
        s_.bar_of.push_back(no_index);
    }

    PartRoom room_;
    FrameSkeleton& s_;
    const Frame& frame_;
    const ResolvedFrame& placed_;
    Resolved& out_;
    std::vector<Lap>& laps_;
    engine::BoxTree tree_;
    FaceLaps face_laps_;
    PlacedBrace brace_;  // the one in hand
};

}  // namespace

void add_braces(const PartRoom& room,
                FrameSkeleton& skeleton,
                const Frame& frame,
                const ResolvedFrame& placed,
                Resolved& out,
                std::vector<Lap>& laps) {
    if (frame.diagonals.empty()) return;
    Braces(room, skeleton, frame, placed, out, laps).add_all();
}

}  // namespace model
