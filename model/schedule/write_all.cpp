#include "model/schedule/write_all.h"

#include "engine/files/whole_file.h"
#include "model/assembly/assembly_csv.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/findings.h"
#include "model/schedule/how_to_read.h"
#include "model/schedule/pieces_json.h"
#include "model/schedule/sheet.h"
#include "model/schedule/square.h"

#include <algorithm>
#include <functional>
#include <system_error>

namespace model {

std::vector<ScheduleFile> schedule_files(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const std::function<BarSupply(const Stock&)>& supply) {
    const auto order = assembly_order(project, catalogue, resolved);
    auto findings = all_findings(project, catalogue, resolved, supply);
    findings.insert(findings.end(), order.problems.begin(), order.problems.end());
    std::ranges::stable_sort(findings, std::ranges::greater{}, &Finding::severity);
    return {{"how_to_read.txt", how_to_read(project, findings)},
            {"cut.csv", cut_csv(project, resolved, cut_rows(project, catalogue, resolved))},
            {"drill.csv", drill_csv(project, resolved, drill_rows(project, catalogue, resolved))},
            {"fasteners.csv", fastener_csv(fastener_rows(project, catalogue, resolved, &order))},
            {"findings.csv", finding_csv(findings)},
            {"bars.csv",
             bar_csv(project, resolved,
                     bar_rows(project, catalogue, resolved,
                              bar_plans(project, catalogue, resolved, {.supply = supply})))},
            {"sheet.csv", sheet_csv(project, resolved, sheet_rows(project, catalogue, resolved))},
            {"square.csv", square_csv(project, square_rows(project, resolved))},
            {"assembly.csv", assembly_csv(project, catalogue, resolved, order)},
            {"pieces.json", pieces_json(project, catalogue, resolved)}};
}

engine::Result<engine::Done> write_all(const std::vector<ScheduleFile>& files,
                                       const std::filesystem::path& folder) {
    std::error_code refused;
    std::filesystem::create_directories(folder, refused);
    if (std::error_code unseen; refused || !std::filesystem::is_directory(folder, unseen)) {
        return engine::Error{.code = engine::ErrorCode::cannot_write,
                             .where = folder.string(),
                             .message = "the folder cannot be made" +
                                        (refused ? ": " + refused.message() : "") +
                                        "; choose another one"};
    }
    for (const auto& file : files) {
        const auto written = engine::write_whole_file(folder / file.name, file.text);
        if (!written) return written.error();
    }
    return engine::Done{};
}

}  // namespace model
