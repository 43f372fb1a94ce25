#include "editor/open_outside.h"

#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <string>

namespace editor {

// The shell stays behind as nobody's child, so that none is left to wait for.
engine::Result<engine::Done> open_outside(const std::filesystem::path& file) {
    std::string shell = "sh";
    std::string option = "-c";
    std::string words =
        "command -v xdg-open >/dev/null || exit 1; xdg-open \"$1\" >/dev/null 2>&1 &";
    std::string name = "open";
    std::string path = std::filesystem::absolute(file).string();
    const std::array<char*, 6> arguments{shell.data(), option.data(), words.data(),
                                         name.data(),  path.data(),   nullptr};
    pid_t child = 0;
    int status = 1;
    const bool is_begun =
        posix_spawnp(&child, "sh", nullptr, nullptr, arguments.data(), environ) == 0;
    if (is_begun && waitpid(child, &status, 0) == child && status == 0) return engine::Done{};
    return engine::Error{engine::ErrorCode::unknown_name, path,
                         "this system has no opener of files; open it in a spreadsheet"};
}

}  // namespace editor
