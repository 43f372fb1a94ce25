#include "editor/scan_loader.h"

#include "editor/obstacle_words.h"
#include "editor/room_scene.h"
#include "editor/scan_mesh_drawn.h"
#include "editor/scan_paths.h"

#include <algorithm>
#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

const model::ScannedObstacle* scan_of(const model::Obstacle& obstacle) {
    return std::get_if<model::ScannedObstacle>(&obstacle.shape);
}

bool is_settled(const Desk& desk, const std::string& key) { return desk.scans->contains(key); }

void take_ready(Desk& desk, ScanLoader& loader) {
    if (!loader.work || !loader.work->is_finished()) return;
    const auto& result = loader.work->result();
    auto library = *desk.scans;
    if (result) {
        library.insert_or_assign(loader.key, result->scan);
        loader.drawn[loader.key] = result->drawn;
        // Without a skeleton the room is all that there is to see.
        if (project_of(desk).frames.empty()) desk.ui.view.wants_fit = true;
    } else {
        library.insert_or_assign(loader.key, result.error());
    }
    desk.scans = std::make_shared<const model::ScanLibrary>(std::move(library));
    // What follows from the project follows from its scans too.
    forget_derived(desk);
    loader.work.reset();
}

// That of a form which is open, where it says another file or unit than any in the room. While a
// file's name is being typed there is no such file.
const model::ScannedObstacle* scan_of_form(const Desk& desk) {
    const auto* form = std::get_if<ObstacleForm>(&desk.ui.dialog);
    const auto* scan = form == nullptr ? nullptr : scan_of(form->obstacle);
    if (scan == nullptr || is_settled(desk, model::scan_key(*scan))) return nullptr;
    const auto file = scan_path(desk, scan->file);
    std::error_code ignored;
    return is_scan_file(file) && fs::is_regular_file(file, ignored) ? scan : nullptr;
}

const model::ScannedObstacle* next_scan(const Desk& desk) {
    for (const auto& obstacle : project_of(desk).room) {
        const auto* scan = scan_of(obstacle);
        if (scan != nullptr && !is_settled(desk, model::scan_key(*scan))) return scan;
    }
    return scan_of_form(desk);
}

void begin_next(Desk& desk, ScanLoader& loader) {
    const auto* scan = next_scan(desk);
    if (scan == nullptr) return;
    loader.key = model::scan_key(*scan);
    const auto file = scan_path(desk, scan->file);
    const auto read = loader.read_file == file ? loader.read : ReadMesh{};
    loader.work = std::make_unique<BackgroundWork<LoadedScan>>(
        [file, unit = scan->unit, read](const auto& go_on) {
            return loaded_scan(file, unit, read, go_on);
        });
}

// The import's own mesh is let go once it serves nothing any more.
void forget_read(const Desk& desk, ScanLoader& loader) {
    if (loader.work || !loader.read || std::holds_alternative<ScanForm>(desk.ui.dialog)) return;
    loader.read.reset();
    loader.read_file.clear();
}

}  // namespace

ScanReading::ScanReading(const fs::path& file)
    : work{[file](const BackgroundWork<ReadMesh>::GoOn& go_on) -> engine::Result<ReadMesh> {
          auto mesh = engine::read_scan_mesh(file, {go_on});
          if (!mesh) return mesh.error();
          return std::make_shared<const engine::ScanMesh>(std::move(mesh).value());
      }} {}

void tend_scans(Desk& desk) {
    if (!desk.scan_loader) {
        if (next_scan(desk) == nullptr) return;
        desk.scan_loader = std::make_shared<ScanLoader>();
    }
    auto& loader = *desk.scan_loader;
    take_ready(desk, loader);
    if (!loader.work) begin_next(desk, loader);
    forget_read(desk, loader);
    if (loader.work) desk.ui.goes_on = true;
}

std::string scan_words(const Desk& desk) {
    const auto& loader = desk.scan_loader;
    if (!loader || !loader->work) return {};
    const auto percent = static_cast<int>(loader->work->done() * 100.0);
    const auto file = fs::path(file_of_key(loader->key)).filename().string();
    return "reading " + file + ": " + std::to_string(percent) + " %";
}

std::string scan_words(const Desk& desk, const model::ScannedObstacle& scan) {
    const auto key = model::scan_key(scan);
    if (desk.scan_loader && desk.scan_loader->key == key) {
        const auto reading = scan_words(desk);
        if (!reading.empty()) return reading;
    }
    const auto known = desk.scans->find(key);
    if (known == desk.scans->end() || known->second) return {};
    return engine::to_text(known->second.error());
}

void stop_scan(Desk& desk) {
    if (desk.scan_loader && desk.scan_loader->work) desk.scan_loader->work->cancel();
}

bool has_unread_scans(const Desk& desk) {
    return std::ranges::any_of(*desk.scans, [](const auto& entry) { return !entry.second; });
}

void read_scans_again(Desk& desk) {
    auto library = *desk.scans;
    std::erase_if(library, [](const auto& entry) { return !entry.second; });
    desk.scans = std::make_shared<const model::ScanLibrary>(std::move(library));
    forget_derived(desk);
}

void forget_fault(Desk& desk, const model::ScannedObstacle& scan) {
    const auto known = desk.scans->find(model::scan_key(scan));
    if (known == desk.scans->end() || known->second) return;
    auto library = *desk.scans;
    library.erase(model::scan_key(scan));
    desk.scans = std::make_shared<const model::ScanLibrary>(std::move(library));
}

std::shared_ptr<const engine::SceneBatch> scan_batch(Desk& desk) {
    if (!desk.scan_loader || desk.scan_loader->drawn.empty()) return nullptr;
    auto& loader = *desk.scan_loader;
    const auto& room = project_of(desk).room;
    std::vector<DrawnScan> wanted;
    for (const auto& placed : placed_scans(derived(desk), *desk.scans)) {
        const auto* scan = scan_of(room[placed.obstacle]);
        if (scan == nullptr || !loader.drawn.contains(model::scan_key(*scan))) continue;
        wanted.push_back({model::scan_key(*scan), placed.place, placed.obstacle});
    }
    const auto is_same = [](const DrawnScan& a, const DrawnScan& b) {
        return a.key == b.key && a.obstacle == b.obstacle && a.place.origin == b.place.origin &&
               a.place.x == b.place.x && a.place.y == b.place.y && a.place.z == b.place.z;
    };
    if (loader.batch && std::ranges::equal(wanted, loader.batch_of, is_same)) return loader.batch;
    engine::SceneBatch batch;
    for (const auto& scan : wanted) {
        append_placed(batch.mesh, *loader.drawn.find(scan.key)->second, scan.place);
        engine::close_item(batch, scan_look(scan.obstacle));
    }
    loader.batch_of = std::move(wanted);
    loader.batch = std::make_shared<const engine::SceneBatch>(std::move(batch));
    return loader.batch;
}

void browse_for_scan(Desk& desk) {
    std::error_code ignored;
    const auto folder = desk.file.empty() ? fs::current_path(ignored) : desk.file.parent_path();
    interrupt_with(desk, browser_for(BrowseFor::scan, folder));
}

void import_scan(Desk& desk, const fs::path& file) { import_scans(desk, {file}); }

void import_scans(Desk& desk, std::vector<fs::path> files) {
    if (files.empty()) return;
    const fs::path file = files.front();
    ScanForm form;  // gcc 12 takes members of one made with initialisers for unset
    form.file = file;
    form.reading = std::make_shared<ScanReading>(file);
    form.waiting.assign(files.begin() + 1, files.end());
    form.obstacle.name = free_obstacle_name(project_of(desk), "scan");
    form.obstacle.shape = model::ScannedObstacle{.file = stated_path(desk, file)};
    interrupt_with(desk, std::move(form));
}

}  // namespace editor
