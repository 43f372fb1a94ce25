// The schedules' rows as the text of CSV files.
#pragma once

#include "model/schedule/tables.h"

#include <string>
#include <vector>

namespace model {

std::string cut_csv(const Project& project,
                    const Resolved& resolved,
                    const std::vector<CutRow>& rows);

std::string drill_csv(const Project& project,
                      const Resolved& resolved,
                      const std::vector<DrillRow>& rows);

std::string fastener_csv(const std::vector<FastenerRow>& rows);

std::string bar_csv(const Project& project,
                    const Resolved& resolved,
                    const std::vector<BarRow>& rows);

std::string finding_csv(const std::vector<Finding>& findings);

}  // namespace model
