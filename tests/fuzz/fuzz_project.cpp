// libFuzzer target: whatever the bytes are, reading, resolving and writing come to an end, and what
// is written can be read by an outsider. Build with the preset `fuzz`.
#include "engine/files/csv.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"
#include "model/schedule/write_all.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

const model::Catalogue& catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) std::abort();
    return *loaded;
}

void require(bool ok) {
    if (!ok) std::abort();
}

bool can_be_read(const model::ScheduleFile& file) {
    if (file.name.ends_with(".csv")) {
        const auto table = engine::read_csv(file.text);
        return table && engine::to_csv(*table) == file.text;
    }
    return !nlohmann::json::parse(file.text, nullptr, false).is_discarded();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text{reinterpret_cast<const char*>(data), size};
    const auto project = model::read_project_json(text);
    if (!project) {
        require(!project.error().message.empty());
        return 0;
    }
    const auto again = model::read_project_json(model::to_json_text(*project));
    require(again && *again == *project);
    const auto resolved = model::resolve(*project, catalogue());
    const auto files = model::schedule_files(*project, catalogue(), resolved);
    require(files.size() == model::schedule_names.size());
    for (const auto& file : files) require(can_be_read(file));
    return 0;
}
