#include "model/resolve/between_nodes.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/brace_place.h"
#include "model/resolve/face_laps.h"
#include "model/resolve/leaning_findings.h"
#include "model/resolve/leaning_notch.h"
#include "model/resolve/leaning_place.h"

#include <cmath>
#include <utility>

namespace model {
namespace {

Length between_nodes(const BraceLine& line) {
    const auto& [from, to] = line.nodes;
    const double apart =
        std::hypot(static_cast<double>(to[0] - from[0]), static_cast<double>(to[1] - from[1]));
    return Length::from_nm(std::llround(apart));
}

class BetweenNodes {
public:
    BetweenNodes(const PartRoom& room,
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

    void add_leaning() {
        for (Index i = 0; i < frame_.leaning.size(); ++i) add_leaning(i);
        face_laps_.put_in();
    }

    void add_braces() {
        for (Index i = 0; i < frame_.diagonals.size(); ++i) add_brace(i);
        face_laps_.put_in();
    }

private:
    void add_leaning(Index stated) {
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
        stand(*line, *face, *placed);
    }

    void add_brace(Index stated) {
        const Diagonal& brace = frame_.diagonals[stated];
        const Subject subject{SubjectKind::diagonal, frame_.name, brace.name};
        const auto line = brace_line(room_, frame_, placed_, stated, out_.findings);
        if (!line) return;
        const auto face = brace_face(*line, s_, laps_);
        if (!face) return say(brace_without_face(subject, brace.face));
        auto placed = place_brace(room_, s_, {out_.outlines, out_.leans}, tree_, *line, *face);
        if (!placed) return say(brace_without_room(subject, between_nodes(*line)));
        placed->piece.plates[0].outline = static_cast<Index>(out_.outlines.size());
        out_.outlines.push_back(placed->outline);
        stand(*line, *face, *placed);
    }

    template <class Placed>
    void stand(const BraceLine& line, const BraceFace& face, Placed& placed) {
        placed.piece.lean = static_cast<Index>(out_.leans.size());
        out_.leans.push_back(placed.lean);
        s_.pieces.push_back(placed.piece);
        s_.bar_of.push_back(no_index);
        face_laps_.find(line, face,
                        {static_cast<Index>(s_.pieces.size() - 1), placed.polygon, placed.surface});
    }

    void say(Finding finding) { out_.findings.push_back(std::move(finding)); }

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
    BetweenNodes(room, skeleton, frame, placed, out, laps).add_leaning();
}

void add_braces(const PartRoom& room,
                FrameSkeleton& skeleton,
                const Frame& frame,
                const ResolvedFrame& placed,
                Resolved& out,
                std::vector<Lap>& laps) {
    if (frame.diagonals.empty()) return;
    BetweenNodes(room, skeleton, frame, placed, out, laps).add_braces();
}

}  // namespace model
