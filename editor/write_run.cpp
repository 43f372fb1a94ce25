#include "editor/write_run.h"

#include "editor/desk.h"
#include "engine/files/whole_file.h"

#include <memory>
#include <system_error>

namespace editor {
namespace {

namespace fs = std::filesystem;

engine::Result<engine::Done> write(const NewFile& file) {
    std::error_code refused;
    const auto folder = file.path.parent_path();
    fs::create_directories(folder, refused);
    if (std::error_code unseen; refused || !fs::is_directory(folder, unseen)) {
        return engine::Error{.code = engine::ErrorCode::cannot_write,
                             .where = folder.string(),
                             .message = "the folder cannot be made" +
                                        (refused ? ": " + refused.message() : "") +
                                        "; choose another one"};
    }
    if (std::error_code unseen; file.keeps_old && fs::exists(file.path, unseen)) {
        return engine::Done{};
    }
    return engine::write_whole_file(file.path, file.bytes);
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
    for (const auto& file : made.files) {
        if (auto written = write(file); !written) return written;
    }
    for (const auto& file : made.gone) {
        std::error_code unseen;
        fs::remove(file, unseen);
    }
    return engine::Done{};
}

}  // namespace editor
