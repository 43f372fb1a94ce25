// Finding a file or folder inside the window: folders, a typed path, the keyboard.
#pragma once

#include "editor/intent.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace editor {

enum class BrowseFor { opening, saving, exporting, scan };

struct FolderEntry {
    std::string name;
    bool is_folder = false;

    bool operator==(const FolderEntry&) const = default;
};

struct FileBrowser {
    BrowseFor purpose = BrowseFor::opening;
    std::filesystem::path folder;
    std::string typed_folder;  // what stands in the field for it
    std::string file_name;     // when opening or saving
    bool shows_all_files = false;
    std::vector<FolderEntry> entries;  // folders first, by name
    std::optional<std::size_t> chosen;
    std::string trouble;                              // why the last step was not possible
    std::optional<std::filesystem::path> to_make;     // a folder that was typed but is not there
    std::optional<std::filesystem::path> overwrites;  // a file that stands in the way
    std::vector<std::string> replaced;  // when exporting: schedules that are there already
    std::optional<Intent> then;         // what saving was asked for
    bool is_fresh = true;               // not drawn yet
};

// Whether the name ends as a project's does; and a name that does.
bool is_project_file(const std::filesystem::path& file);
bool is_scan_file(const std::filesystem::path& file);  // PLY, STL, OBJ, GLB
std::filesystem::path with_project_ending(std::filesystem::path file);

// A browser that shows the folder, or the nearest one above it that there is.
FileBrowser browser_for(BrowseFor purpose,
                        const std::filesystem::path& folder,
                        std::string file_name = {});

// Reads the folder; when it cannot be read the browser stays where it was and says why.
void go_to(FileBrowser& browser, const std::filesystem::path& folder);
void go_up(FileBrowser& browser);
void read_again(FileBrowser& browser);

// Takes what was typed as the folder: a folder to go to, a file to take, or a folder to make.
std::optional<std::filesystem::path> take_typed_path(FileBrowser& browser);

// Makes the folder that was typed, and goes there.
void make_typed_folder(FileBrowser& browser);

// What the main button gives: none when something is still to be mended or answered.
std::optional<std::filesystem::path> accept(FileBrowser& browser);

struct BrowserOutcome {
    std::optional<std::filesystem::path> taken;
    bool is_cancelled = false;
};

BrowserOutcome draw_file_browser(FileBrowser& browser);

}  // namespace editor
