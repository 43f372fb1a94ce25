// All schedules of a project, as the texts of files.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/bar_supply.h"
#include "model/resolve/resolved.h"

#include <array>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct ScheduleFile {
    std::string name;  // "cut.csv"
    std::string text;
};

// What the files are called, in the order of schedule_files.
inline constexpr std::array<std::string_view, 10> schedule_names{
    "how_to_read.txt", "cut.csv",   "drill.csv",  "fasteners.csv", "findings.csv",
    "bars.csv",        "sheet.csv", "square.csv", "assembly.csv",  "pieces.json"};

// One file for each of schedule_names, in that order. `supply` is that of PlanWish.
std::vector<ScheduleFile> schedule_files(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const std::function<BarSupply(const Stock&)>& supply = {});

// Writes them into a folder that is made when it is missing. Error: cannot_write.
engine::Result<engine::Done> write_all(const std::vector<ScheduleFile>& files,
                                       const std::filesystem::path& folder);

}  // namespace model
