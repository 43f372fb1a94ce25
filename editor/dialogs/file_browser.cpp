#include "editor/dialogs/file_browser.h"

#include "editor/export_run.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>
#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

// By the whole of it the desktop knows a project; the program reads any file that ends as JSON.
constexpr std::string_view new_ending = ".barwright.json";
constexpr std::string_view project_ending = ".json";

std::string lowered(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) {
        return static_cast<char>(c < 128 && c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    });
    return text;
}

bool comes_before(const FolderEntry& a, const FolderEntry& b) {
    if (a.is_folder != b.is_folder) return a.is_folder;
    return std::pair(lowered(a.name), a.name) < std::pair(lowered(b.name), b.name);
}

// Takes a file that is there.
bool opens(const FileBrowser& browser) {
    return browser.purpose == BrowseFor::opening || browser.purpose == BrowseFor::scan;
}

bool is_shown(const FileBrowser& browser, const FolderEntry& entry) {
    if (entry.name.empty() || entry.name.front() == '.') return false;
    if (entry.is_folder || browser.shows_all_files) return true;
    if (browser.purpose == BrowseFor::scan) return is_scan_file(entry.name);
    return browser.purpose != BrowseFor::exporting && is_project_file(entry.name);
}

bool read_entries(FileBrowser& browser, const fs::path& folder, std::error_code& error) {
    std::vector<FolderEntry> entries;
    const auto options = fs::directory_options::skip_permission_denied;
    for (fs::directory_iterator at(folder, options, error), end; !error && at != end;
         at.increment(error)) {
        std::error_code ignored;
        FolderEntry entry{at->path().filename().string(), at->is_directory(ignored)};
        if (is_shown(browser, entry)) entries.push_back(std::move(entry));
    }
    if (error) return false;
    std::sort(entries.begin(), entries.end(), comes_before);
    browser.entries = std::move(entries);
    return true;
}

fs::path nearest_folder(const fs::path& wanted) {
    std::error_code error;
    fs::path folder = fs::absolute(wanted.empty() ? fs::path(".") : wanted, error);
    if (error) return "/";
    folder = folder.lexically_normal();
    if (!folder.has_filename() && folder.has_parent_path()) folder = folder.parent_path();
    while (!fs::is_directory(folder, error) && folder.has_relative_path()) {
        folder = folder.parent_path();
    }
    return folder;
}

// "~" is the home folder; what is not absolute begins in the folder that is shown.
fs::path typed_path(const FileBrowser& browser) {
    const std::string& typed = browser.typed_folder;
    const char* home = std::getenv("HOME");
    if (home != nullptr && (typed == "~" || typed.rfind("~/", 0) == 0)) {
        return fs::path(home) / fs::path(typed.substr(std::min<std::size_t>(2, typed.size())));
    }
    return browser.folder / fs::path(typed);
}

std::optional<fs::path> accept_opening(FileBrowser& browser) {
    if (browser.file_name.empty()) {
        browser.trouble = "Choose a project file first";
        return std::nullopt;
    }
    const fs::path file = browser.folder / browser.file_name;
    std::error_code error;
    if (fs::is_regular_file(file, error)) return file;
    browser.trouble = "There is no file " + browser.file_name + " in this folder";
    return std::nullopt;
}

std::optional<fs::path> accept_saving(FileBrowser& browser) {
    if (browser.file_name.empty() || browser.file_name.find('/') != std::string::npos) {
        browser.trouble = browser.file_name.empty() ? "Give the file a name first"
                                                    : "A file name cannot have a / in it";
        return std::nullopt;
    }
    const fs::path file = with_project_ending(browser.folder / browser.file_name);
    std::error_code error;
    if (fs::is_directory(file, error)) {
        browser.trouble = file.filename().string() + " is a folder";
        return std::nullopt;
    }
    if (fs::exists(file, error) && browser.overwrites != file) {
        browser.overwrites = file;
        return std::nullopt;
    }
    return file;
}

}  // namespace

bool is_project_file(const fs::path& file) {
    return lowered(file.extension().string()) == project_ending;
}

bool is_scan_file(const fs::path& file) {
    const auto ending = lowered(file.extension().string());
    return ending == ".ply" || ending == ".stl" || ending == ".obj" || ending == ".glb";
}

fs::path with_project_ending(fs::path file) {
    if (is_project_file(file)) return file;
    const bool is_begun = lowered(file.extension().string()) == ".barwright";
    file += fs::path(is_begun ? project_ending : new_ending);
    return file;
}

FileBrowser browser_for(BrowseFor purpose, const fs::path& folder, std::string file_name) {
    FileBrowser browser;
    browser.purpose = purpose;
    browser.file_name = std::move(file_name);
    go_to(browser, nearest_folder(folder));
    return browser;
}

void go_to(FileBrowser& browser, const fs::path& folder) {
    browser.to_make.reset();
    browser.overwrites.reset();
    std::error_code error;
    const fs::path clean = folder.lexically_normal();
    if (!read_entries(browser, clean, error)) {
        browser.trouble = "Cannot read " + clean.string() + ": " + error.message();
        return;
    }
    browser.trouble.clear();
    browser.chosen.reset();
    browser.folder = clean.has_filename() || !clean.has_parent_path() || clean == clean.root_path()
                         ? clean
                         : clean.parent_path();
    browser.typed_folder = browser.folder.string();
    if (opens(browser)) browser.file_name.clear();
    if (browser.purpose == BrowseFor::exporting) browser.replaced = exported_in(browser.folder);
}

void go_up(FileBrowser& browser) {
    if (browser.folder.has_relative_path()) go_to(browser, browser.folder.parent_path());
}

void read_again(FileBrowser& browser) {
    std::error_code error;
    read_entries(browser, browser.folder, error);
    browser.chosen.reset();
}

std::optional<fs::path> take_typed_path(FileBrowser& browser) {
    const fs::path path = typed_path(browser).lexically_normal();
    std::error_code error;
    if (fs::is_directory(path, error)) {
        go_to(browser, path);
        return std::nullopt;
    }
    if (fs::exists(path, error)) {
        if (opens(browser)) return path;
        browser.trouble = path.string() + " is a file, not a folder";
        return std::nullopt;
    }
    browser.trouble = "There is no folder " + path.string();
    if (!opens(browser)) browser.to_make = path;
    return std::nullopt;
}

void make_typed_folder(FileBrowser& browser) {
    if (!browser.to_make) return;
    const fs::path path = *browser.to_make;
    std::error_code error;
    fs::create_directories(path, error);
    if (error) {
        browser.trouble = "Cannot make " + path.string() + ": " + error.message();
        return;
    }
    go_to(browser, path);
}

std::optional<fs::path> accept(FileBrowser& browser) {
    browser.trouble.clear();
    if (fs::path(browser.typed_folder) != browser.folder) {
        const auto taken = take_typed_path(browser);
        if (taken || !browser.trouble.empty()) return taken;
    }
    switch (browser.purpose) {
        case BrowseFor::opening:
        case BrowseFor::scan:
            return accept_opening(browser);
        case BrowseFor::saving:
            return accept_saving(browser);
        case BrowseFor::exporting:
            return browser.folder;
    }
    return std::nullopt;
}

}  // namespace editor
