#include "editor/scan_paths.h"

#include "editor/scan_loader.h"

#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

bool is_below(const fs::path& relative) {
    return !relative.empty() && *relative.begin() != fs::path("..");
}

// From the system's root; as it is where the system cannot say.
fs::path whole(const fs::path& file) {
    std::error_code error;
    const auto path = fs::absolute(file, error);
    return (error ? file : path).lexically_normal();
}

// As a project in that file names another file; one that was never saved has no folder.
std::string path_from(const fs::path& project, const fs::path& file) {
    const auto path = whole(file);
    if (project.empty()) return path.string();
    const auto relative = path.lexically_relative(whole(project).parent_path());
    return is_below(relative) ? relative.string() : path.string();
}

fs::path path_in(const fs::path& project, const std::string& stated) {
    const fs::path file(stated);
    if (file.is_absolute() || project.empty()) return file;
    return (project.parent_path() / file).lexically_normal();
}

bool has_same_folder(const fs::path& a, const fs::path& b) {
    if (a.empty() || b.empty()) return a.empty() == b.empty();
    return whole(a).parent_path() == whole(b).parent_path();
}

std::string restated_path(const std::string& stated,
                          const fs::path& old_file,
                          const fs::path& new_file) {
    return stated.empty() ? stated : path_from(new_file, path_in(old_file, stated));
}

template <class Path>
std::string restated_key(const std::string& key, const Path& path) {
    const auto file = file_of_key(key);
    return key.substr(0, key.size() - file.size()) + path(file);
}

template <class Map, class Path>
Map with_keys(const Map& map, const Path& path) {
    Map other;
    for (const auto& [key, value] : map) other.emplace(restated_key(key, path), value);
    return other;
}

template <class Path>
void restate_form(Dialog& dialog, const Path& path) {
    model::Obstacle* obstacle = nullptr;
    if (auto* form = std::get_if<ObstacleForm>(&dialog)) obstacle = &form->obstacle;
    if (auto* form = std::get_if<ScanForm>(&dialog)) obstacle = &form->obstacle;
    if (obstacle == nullptr) return;
    auto* scan = std::get_if<model::ScannedObstacle>(&obstacle->shape);
    if (scan != nullptr) scan->file = path(scan->file);
}

// Gives whether one is named in another way now. In a project that was never saved they are named
// as they shall lie beside it.
template <class Path>
bool restate_price_lists(std::vector<model::Supplier>& suppliers, const Path& path) {
    bool is_other = false;
    for (auto& supplier : suppliers) {
        auto stated = path(supplier.prices);
        is_other = is_other || stated != supplier.prices;
        supplier.prices = std::move(stated);
    }
    return is_other;
}

}  // namespace

fs::path scan_path(const Desk& desk, const std::string& stated) {
    return path_in(desk.file, stated);
}

std::string stated_path(const Desk& desk, const fs::path& file) {
    return path_from(desk.file, file);
}

std::optional<model::Project> restated_files(const model::Project& project,
                                             const fs::path& old_file,
                                             const fs::path& new_file) {
    if (has_same_folder(old_file, new_file)) return std::nullopt;
    std::optional<model::Project> other;
    for (std::size_t i = 0; i < project.room.size(); ++i) {
        const auto* scan = std::get_if<model::ScannedObstacle>(&project.room[i].shape);
        if (scan == nullptr) continue;
        const auto path = restated_path(scan->file, old_file, new_file);
        if (path == scan->file) continue;
        if (!other) other = project;
        std::get<model::ScannedObstacle>(other->room[i].shape).file = path;
    }
    auto suppliers = project.suppliers;
    const bool is_other =
        !old_file.empty() && restate_price_lists(suppliers, [&](const std::string& stated) {
            return restated_path(stated, old_file, new_file);
        });
    if (is_other) {
        if (!other) other = project;
        other->suppliers = std::move(suppliers);
    }
    return other;
}

void restate_files(Desk& desk, const fs::path& new_file) {
    const fs::path old_file = desk.file;  // `new_file` may be this very one
    desk.file = new_file;
    if (has_same_folder(old_file, new_file)) return;
    desk.history.restate(
        [&](const model::Project& project) { return restated_files(project, old_file, new_file); });
    const auto path = [&](const std::string& stated) {
        return restated_path(stated, old_file, new_file);
    };
    restate_form(desk.ui.dialog, path);
    for (auto& dialog : desk.ui.interrupted) restate_form(dialog, path);
    desk.scans = std::make_shared<const model::ScanLibrary>(with_keys(*desk.scans, path));
    if (desk.scan_loader) {
        auto& loader = *desk.scan_loader;
        loader.drawn = with_keys(loader.drawn, path);
        if (loader.work) loader.key = restated_key(loader.key, path);
    }
    forget_derived(desk);
}

// The key is the unit, a space and the file.
std::string file_of_key(const std::string& key) { return key.substr(key.find(' ') + 1); }

}  // namespace editor
