#include "editor/write_run.h"

#include "editor/desk.h"
#include "engine/files/whole_file.h"

#include <memory>
#include <system_error>

namespace editor {
namespace {

namespace fs = std::filesystem;

// In the folder that the program runs in where the path names none.
engine::Result<engine::Done> make_folder(const fs::path& folder) {
    if (folder.empty()) return engine::Done{};
    std::error_code refused;
    fs::create_directories(folder, refused);
    std::error_code unseen;
    if (!refused && fs::is_directory(folder, unseen)) return engine::Done{};
    return engine::Error{.code = engine::ErrorCode::cannot_write,
                         .where = folder.string(),
                         .message = "the folder cannot be made" +
                                    (refused ? ": " + refused.message() : "") +
                                    "; choose another one"};
}

// Whether the file is a new one now.
engine::Result<bool> write(const NewFile& file) {
    if (auto folder = make_folder(file.path.parent_path()); !folder) return folder.error();
    if (std::error_code unseen; file.keeps_old && fs::exists(file.path, unseen)) return false;
    auto written = engine::write_whole_file(file.path, file.bytes);
    if (!written) return written.error();
    return true;
}

engine::Error after_others(engine::Error error, std::size_t written, std::size_t all) {
    if (written > 0) {
        error.message += "; " + std::to_string(written) + " of " + std::to_string(all) +
                         " files were written before it and are new, the others are as they were";
    }
    return error;
}

}  // namespace

void begin_writing(Desk& desk, std::string title, WriteWork work, TakeWritten take) {
    if (desk.bands) {
        interrupt_with(desk, Writing{std::make_shared<WriteRun>(std::move(title), std::move(take),
                                                                std::move(work), desk.wake)});
        return;
    }
    take(desk, caught<ToWrite>([&] { return work([](double) { return true; }); }));
}

engine::Error was_cancelled() {
    return {engine::ErrorCode::cancelled, "", "it was cancelled; nothing is written"};
}

BackgroundWork<ToWrite>::GoOn part_of(const BackgroundWork<ToWrite>::GoOn& go_on,
                                      double from,
                                      double to) {
    return [&go_on, from, to](double done) { return go_on(from + (to - from) * done); };
}

engine::Result<engine::Done> write_all(const ToWrite& made) {
    std::size_t is_new = 0;
    for (const auto& file : made.files) {
        const auto written = write(file);
        if (!written) return after_others(written.error(), is_new, made.files.size());
        if (*written) ++is_new;
    }
    for (const auto& file : made.gone) {
        std::error_code unseen;
        fs::remove(file, unseen);
    }
    return engine::Done{};
}

}  // namespace editor
