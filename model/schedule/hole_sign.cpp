#include "model/schedule/hole_sign.h"

namespace model {
namespace {

// Behind all other plates of its stack.
bool is_farthest(const Fastener& fastener, const Hole& hole) {
    if (fastener.stack_count == 0) return false;
    const auto& last = fastener.stack[fastener.stack_count - 1U];
    return last.piece == hole.piece && last.wall == hole.wall;
}

}  // namespace

HoleSign sign_of(const Resolved& resolved, const Hole& hole) {
    using Kind = FastenerSpec::Kind;
    using Operation = HoleOperation;
    if (hole.operation == Operation::countersink) return HoleSign::countersunk;
    const bool is_tapped = hole.tap != no_index || hole.operation == Operation::tap ||
                           hole.operation == Operation::tap_drill;
    if (is_tapped) return HoleSign::tapped;
    if (hole.fastener >= resolved.fasteners.size()) return HoleSign::van;
    const auto& fastener = resolved.fasteners[hole.fastener];
    switch (fastener.spec.kind) {
        case Kind::blind_rivet:
            return HoleSign::rivet;
        case Kind::screw_in_rivet_nut:
            return is_farthest(fastener, hole) ? HoleSign::rivet_nut : HoleSign::screw;
        case Kind::screw_tapped:
        case Kind::screw_through:
            break;
    }
    return HoleSign::screw;
}

const char* words_of(HoleSign sign) {
    switch (sign) {
        case HoleSign::rivet:
            return "rivet";
        case HoleSign::tapped:
            return "tapped";
        case HoleSign::screw:
            return "screw through";
        case HoleSign::rivet_nut:
            return "rivet nut";
        case HoleSign::countersunk:
            return "countersunk";
        case HoleSign::van:
            break;
    }
    return "to the van";
}

}  // namespace model
