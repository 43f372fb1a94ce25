// Where a diagonal or a leaning member runs: its stock, its face and its two nodes as lengths.
#pragma once

#include "model/resolve/name_index.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/skeleton.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {

struct BraceLine {
    Index stated = 0;  // in Frame::diagonals, or in Frame::leaning
    Index stock = 0;
    Nm width = 0;
    Nm thickness = 0;
    FaceSide side = FaceSide::inside;
    BraceEnds ends = BraceEnds::outline;
    std::size_t normal = 0;                    // across the face
    Nm face = 0;                               // where its plane lies
    std::array<std::size_t, 2> axes{};         // the face's own, in order
    std::array<std::array<Nm, 2>, 2> nodes{};  // from, to
};

// None where the diagonal cannot be laid out; what is amiss becomes a finding, but for names that
// are not there: check_stated tells those.
std::optional<BraceLine> brace_line(const PartRoom& room,
                                    const Frame& frame,
                                    const ResolvedFrame& placed,
                                    Index stated,
                                    std::vector<Finding>& findings);

// The same of a leaning member, which is of angle: the width is that of its leg along the face.
std::optional<BraceLine> leaning_line(const PartRoom& room,
                                      const Frame& frame,
                                      const ResolvedFrame& placed,
                                      Index stated,
                                      std::vector<Finding>& findings);

}  // namespace model
