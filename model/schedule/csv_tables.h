// The schedules' rows as the fields of CSV files.
#pragma once

#include "engine/files/csv.h"
#include "model/schedule/tables.h"

#include <vector>

namespace model {

engine::CsvTable cut_table(const Project& project,
                           const Resolved& resolved,
                           const std::vector<CutRow>& rows);

engine::CsvTable drill_table(const Project& project,
                             const Resolved& resolved,
                             const std::vector<DrillRow>& rows);

engine::CsvTable fastener_table(const std::vector<FastenerRow>& rows);

engine::CsvTable bar_table(const Project& project,
                           const Resolved& resolved,
                           const std::vector<BarRow>& rows);

engine::CsvTable finding_table(const std::vector<Finding>& findings);

}  // namespace model
