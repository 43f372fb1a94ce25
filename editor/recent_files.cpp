#include "editor/recent_files.h"

#include "editor/state_folder.h"
#include "engine/files/json_text.h"
#include "engine/files/whole_file.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <system_error>

namespace editor {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

fs::path list_in(const fs::path& state_folder) { return state_folder / "recent.json"; }

bool is_there(const fs::path& file) {
    std::error_code ignored;
    return fs::is_regular_file(file, ignored);
}

// Also those that are not there now: a stick may be plugged in again.
std::vector<fs::path> files_in(const fs::path& state_folder) {
    std::vector<fs::path> files;
    if (state_folder.empty()) return files;
    const auto text = engine::read_whole_file(list_in(state_folder), 1U << 20U);
    if (!text) return files;
    const auto list = engine::read_json(*text);
    if (!list || !list->is_array()) return files;
    for (const auto& entry : *list) {
        if (entry.is_string() && files.size() < most_recent_files)
            files.emplace_back(entry.get<std::string>());
    }
    return files;
}

void put_first(std::vector<fs::path>& files, const fs::path& file) {
    std::erase(files, file);
    files.insert(files.begin(), file);
    if (files.size() > most_recent_files) files.resize(most_recent_files);
}

}  // namespace

std::vector<fs::path> recent_files(const fs::path& state_folder) {
    auto files = files_in(state_folder);
    std::erase_if(files, [](const fs::path& file) { return !is_there(file); });
    return files;
}

void add_recent(std::vector<fs::path>& recent, const fs::path& file, const fs::path& state_folder) {
    std::error_code failure;
    auto whole = fs::weakly_canonical(file, failure);
    if (failure) whole = fs::absolute(file, failure);
    if (failure) return;
    put_first(recent, whole);
    if (state_folder.empty() || !is_made(state_folder)) return;
    auto files = files_in(state_folder);  // another program may have written it
    put_first(files, whole);
    json list = json::array();
    // JSON holds no other names: such a file is in the list until the program ends.
    for (const auto& one : files) {
        if (engine::is_utf8(one.string())) list.push_back(one.string());
    }
    const auto text = list.dump(2) + "\n";
    static_cast<void>(engine::write_whole_file(list_in(state_folder), text));
}

}  // namespace editor
