#include "model/resolve/leaning.h"

#include "model/resolve/face_laps.h"
#include "model/resolve/leaning_findings.h"
#include "model/resolve/leaning_notch.h"
#include "model/resolve/leaning_place.h"

#include <cmath>

namespace model {
namespace {

Length between_nodes(const BraceLine& line) {
    const auto& [from, to] = line.nodes;
    const double apart =
        std::hypot(static_cast<double>(to[0] - from[0]), static_cast<double>(to[1] - from[1]));
    return Length::from_nm(std::llround(apart));
}

class LeaningMembers {
public:
    LeaningMembers(const PartRoom& room,
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
        for (Index i = 0; i < frame_.leaning.size(); ++i) add(i);
        face_laps_.put_in();
    }

private:
    void say(Finding finding) { out_.findings.push_back(std::move(finding)); }

    void add(Index stated) {
        const Leaning& leaning = frame_.leaning[stated];
        const Subject subject{SubjectKind::leaning, frame_.name, leaning.name};
        const auto line = leaning_line(room_, frame_, placed_, stated, out_.findings);
        if (!line) return;
        const auto face = brace_face(*line, s_, laps_);
        if (!face) return say(leaning_without_face(subject, leaning.face));
        auto placed = place_leaning(room_, s_, tree_, *line, *face, leaning.leg);
        if (!placed) return say(leaning_without_room(subject, between_nodes(*line)));
        if (placed->moved_in > 0) {
            const auto by = Length::from_nm(placed->moved_in);
            say(leaning_moved_in(subject, length_in_words(by, room_.project.shown), by));
        }
        notch_for_leaning(room_, *line, *face, *placed, s_, laps_);
        placed->piece.lean = static_cast<Index>(out_.leans.size());
        out_.leans.push_back(placed->lean);
        s_.pieces.push_back(placed->piece);
        s_.bar_of.push_back(no_index);
        face_laps_.find(
            *line, *face,
            {static_cast<Index>(s_.pieces.size() - 1), placed->polygon, placed->surface});
    }

    PartRoom room_;
    FrameSkeleton& s_;
    const Frame& frame_;
    const ResolvedFrame& placed_;
    Resolved& out_;
    std::vector<Lap>& laps_;
    engine::BoxTree tree_;
    FaceLaps face_laps_;
};

}  // namespace

void add_leaning(const PartRoom& room,
                 FrameSkeleton& skeleton,
                 const Frame& frame,
                 const ResolvedFrame& placed,
                 Resolved& out,
                 std::vector<Lap>& laps) {
    if (frame.leaning.empty()) return;
    LeaningMembers(room, skeleton, frame, placed, out, laps).add_all();
}

}  // namespace model
