#include "editor/dropped_files.h"

#include "editor/desk_files.h"
#include "editor/scan_loader.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace editor {

void take_dropped(Desk& desk, const std::vector<std::filesystem::path>& files) {
    if (files.empty()) return;
    std::vector<std::filesystem::path> scans;
    std::ranges::copy_if(files, std::back_inserter(scans), is_scan_file);
    if (scans.empty()) {
        wish(desk, {Intent::Kind::open_file, files.front(), files.size() - 1});
        return;
    }
    const auto left_out = files.size() - scans.size();
    import_scans(desk, std::move(scans));
    if (left_out == 0) return;
    desk.ui.notice = Notice{"Of the files that were dropped only the scans come in; " +
                                std::to_string(left_out) + " other" +
                                (left_out == 1 ? " is" : "s are") + " left out",
                            true};
}

}  // namespace editor
