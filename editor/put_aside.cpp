#include "editor/put_aside.h"

#include <string>
#include <system_error>

namespace editor {

namespace fs = std::filesystem;

fs::path name_aside(const fs::path& file) {
    for (int tried = 1;; ++tried) {
        auto aside = file;
        aside += tried == 1 ? ".old" : ".old" + std::to_string(tried);
        std::error_code unseen;
        if (!fs::exists(fs::symlink_status(aside, unseen))) return aside;
    }
}

engine::Result<engine::Done> put_aside(const fs::path& file) {
    std::error_code error;
    if (!fs::exists(fs::symlink_status(file, error))) return engine::Done{};
    fs::rename(file, name_aside(file), error);
    if (!error) return engine::Done{};
    return engine::Error{engine::ErrorCode::cannot_write, file.string(),
                         "it is another project's and cannot be put aside: " + error.message()};
}

}  // namespace editor
