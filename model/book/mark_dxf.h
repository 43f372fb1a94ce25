// Sheet parts and unrolled pieces at full size, for machines that cut, mark or drill.
#pragma once

#include "engine/drawing/dxf.h"
#include "engine/result.h"
#include "model/book/mark_facts.h"
#include "model/schedule/write_all.h"

#include <vector>

namespace model {

// In millimetres, inner faces up, the datum end below: x runs across, y along the piece from it.
engine::DxfDrawing mark_dxf(const Project& project,
                            const Resolved& resolved,
                            const MarkFacts& facts);

// One file for each mark and hand: "A1.dxf", "A1_opposite.dxf". Error: invalid_value.
engine::Result<std::vector<ScheduleFile>> dxf_files(const Project& project,
                                                    const Catalogue& catalogue,
                                                    const Resolved& resolved);

}  // namespace model
