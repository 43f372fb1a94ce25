// Sheet parts and unrolled pieces at full size, for machines that cut, mark or drill.
#pragma once

#include "engine/drawing/dxf.h"
#include "engine/result.h"
#include "model/book/mark_facts.h"
#include "model/schedule/write_all.h"

#include <string>
#include <vector>

namespace model {

struct DxfWish {
    std::string stamp;        // project_stamp
    bool has_errors = false;  // the project is not fit to cut from, which each file then says
};

// In millimetres, inner faces up, the datum end below: x runs across, y along the piece from it.
// Holes lie on a layer of their own where they are tapped, or drilled at assembly.
engine::DxfDrawing mark_dxf(const Project& project,
                            const Resolved& resolved,
                            const MarkFacts& facts,
                            const DxfWish& wish);

// One file for each mark and hand: "A1.dxf", "A1_opposite.dxf". Error: invalid_value.
engine::Result<std::vector<ScheduleFile>> dxf_files(const Project& project,
                                                    const Catalogue& catalogue,
                                                    const Resolved& resolved,
                                                    bool has_errors);

}  // namespace model
