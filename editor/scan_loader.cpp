#include "editor/scan_loader.h"

#include "editor/obstacle_words.h"
#include "editor/room_scene.h"
#include "editor/scan_mesh_drawn.h"

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
    desk.derived_memo.reset();
    desk.scene_memo.reset();
    desk.room_memo.reset();
    loader.work.reset();
}

void begin_next(Desk& desk, ScanLoader& loader) {
    for (const auto& obstacle : project_of(desk).room) {
        const auto* scan = scan_of(obstacle);
        if (scan == nullptr || is_settled(desk, model::scan_key(*scan))) continue;
        loader.key = model::scan_key(*scan);
        const auto file = scan_path(desk, scan->file);
        const auto read = loader.read_file == file ? loader.read : ReadMesh{};
        loader.work = std::make_unique<BackgroundWork<LoadedScan>>(
            [file, unit = scan->unit, read](const auto& go_on) {
                return loaded_scan(file, unit, read, go_on);
            });
        return;
    }
}

// The import's own mesh is let go once it serves nothing any more.
void forget_read(const Desk& desk, ScanLoader& loader) {
    if (loader.work || !loader.read || std::holds_alternative<ScanForm>(desk.ui.dialog)) return;
    loader.read.reset();
    loader.read_file.clear();
}

bool has_scans(const model::Project& project) {
    return std::ranges::any_of(project.room,
                               [](const auto& obstacle) { return scan_of(obstacle) != nullptr; });
}

bool is_below(const fs::path& relative) {
    return !relative.empty() && *relative.begin() != fs::path("..");
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
        if (!has_scans(project_of(desk))) return;
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
    // The key is the unit, a space and the file.
    const auto file = fs::path(loader->key.substr(loader->key.find(' ') + 1)).filename().string();
    return "reading " + file + ": " + std::to_string(percent) + " %";
}

void stop_scan(Desk& desk) {
    if (desk.scan_loader && desk.scan_loader->work) desk.scan_loader->work->cancel();
}

std::shared_ptr<const engine::SceneBatch> scan_batch(Desk& desk) {
    if (!desk.scan_loader || desk.scan_loader->drawn.empty()) return nullptr;
    auto& loader = *desk.scan_loader;
    const auto& room = project_of(desk).room;
    std::vector<std::pair<std::string, engine::Placement>> wanted;
    std::vector<model::Index> obstacles;
    for (const auto& placed : placed_scans(derived(desk), *desk.scans)) {
        const auto* scan = scan_of(room[placed.obstacle]);
        if (scan == nullptr || !loader.drawn.contains(model::scan_key(*scan))) continue;
        wanted.emplace_back(model::scan_key(*scan), placed.place);
        obstacles.push_back(placed.obstacle);
    }
    const auto is_same = [](const auto& a, const auto& b) {
        return a.first == b.first && a.second.origin == b.second.origin &&
               a.second.x == b.second.x && a.second.y == b.second.y && a.second.z == b.second.z;
    };
    if (loader.batch && std::ranges::equal(wanted, loader.batch_of, is_same)) return loader.batch;
    engine::SceneBatch batch;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        append_placed(batch.mesh, *loader.drawn.find(wanted[i].first)->second, wanted[i].second);
        engine::close_item(batch, scan_look(obstacles[i]));
    }
    loader.batch_of = std::move(wanted);
    loader.batch = std::make_shared<const engine::SceneBatch>(std::move(batch));
    return loader.batch;
}

fs::path scan_path(const Desk& desk, const std::string& stated) {
    const fs::path file(stated);
    if (file.is_absolute() || desk.file.empty()) return file;
    return (desk.file.parent_path() / file).lexically_normal();
}

std::string stated_path(const Desk& desk, const fs::path& file) {
    std::error_code error;
    const auto whole = fs::absolute(file, error).lexically_normal();
    if (error || desk.file.empty()) return whole.string();
    const auto folder = fs::absolute(desk.file, error).lexically_normal().parent_path();
    const auto relative = whole.lexically_relative(folder);
    return is_below(relative) ? relative.string() : whole.string();
}

void browse_for_scan(Desk& desk) {
    std::error_code ignored;
    const auto folder = desk.file.empty() ? fs::current_path(ignored) : desk.file.parent_path();
    interrupt_with(desk, browser_for(BrowseFor::scan, folder));
}

void import_scan(Desk& desk, const fs::path& file) {
    ScanForm form;  // gcc 12 takes members of one made with initialisers for unset
    form.file = file;
    form.reading = std::make_shared<ScanReading>(file);
    form.obstacle.name = free_obstacle_name(project_of(desk), "scan");
    form.obstacle.shape = model::ScannedObstacle{.file = stated_path(desk, file)};
    interrupt_with(desk, std::move(form));
}

}  // namespace editor
