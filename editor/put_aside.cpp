#include "editor/put_aside.h"

#include "engine/files/whole_file.h"

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

bool is_one_file(const fs::path& one, const fs::path& other) {
    std::error_code missing;
    return fs::equivalent(one, other, missing);
}

engine::Result<engine::Done> copy_unread(const fs::path& own, const fs::path& there) {
    std::error_code unseen;
    if (!fs::exists(own, unseen)) return engine::Done{};
    const auto text = engine::read_whole_file(own);
    if (!text) return text.error();
    return engine::write_whole_file(there, *text);
}

}  // namespace editor
