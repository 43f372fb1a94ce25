// What each table of the catalogue says: one function a table.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/catalogue/table.h"

#include <vector>

namespace model {

engine::Result<std::vector<Section>> read_sections(const Table& table);
engine::Result<std::vector<Alloy>> read_alloys(const Table& table);
engine::Result<std::vector<SheetMaterial>> read_sheet_materials(const Table& table);
engine::Result<std::vector<Drill>> read_drills(const Table& table);
// `drills` is what a rivet, a screw or a pin may name.
engine::Result<std::vector<BlindRivet>> read_rivets(const Table& rivets,
                                                    const Table& grips,
                                                    const std::vector<Drill>& drills);
engine::Result<std::vector<MachineScrew>> read_screws(const Table& table,
                                                      const std::vector<Drill>& drills);
engine::Result<std::vector<RivetNut>> read_rivet_nuts(const Table& table,
                                                      const std::vector<MachineScrew>& screws,
                                                      const std::vector<Drill>& drills);
engine::Result<std::vector<SheetPin>> read_pins(const Table& table,
                                                const std::vector<Drill>& drills);
engine::Result<std::vector<LayoutRule>> read_layout_rules(const Table& table);
engine::Result<std::vector<DrillingSpeed>> read_drilling_speeds(const Table& table);
engine::Result<std::vector<VentCover>> read_vent_covers(const Table& table);

}  // namespace model
