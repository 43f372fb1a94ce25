#include "editor/journal_keeper.h"

#include "editor/state_folder.h"

#include <unistd.h>

#include <string>
#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

std::string absolute_text(const fs::path& file) {
    if (file.empty()) return {};
    std::error_code failure;
    const auto whole = fs::absolute(file, failure);
    return failure ? file.string() : whole.string();
}

// The first name that is free: programs that run beside this one, or ran before it, have others.
engine::Result<engine::RecordLog> new_log(const fs::path& folder) {
    constexpr int most_attempts = 1000;
    const auto stem = "edits-" + std::to_string(::getpid()) + "-";
    auto log = engine::RecordLog::create(folder / (stem + "1.journal"));
    for (int n = 2; !log && n <= most_attempts; ++n) {
        std::error_code ignored;
        if (!fs::exists(folder / (stem + std::to_string(n - 1) + ".journal"), ignored)) break;
        log = engine::RecordLog::create(folder / (stem + std::to_string(n) + ".journal"));
    }
    return log;
}

}  // namespace

JournalKeeper::~JournalKeeper() { discard(); }

fs::path JournalKeeper::path() const { return log_ ? log_->path() : fs::path{}; }

void JournalKeeper::keep(Desk& desk, bool is_at_rest) {
    const auto& history = desk.history;
    if (history.is_merging() && !is_at_rest) return;
    const bool is_same_start = saved_ == history.saved() && file_ == desk.file;
    if (is_same_start && (kept_ == history.now() || has_failed_)) return;
    if (!is_same_start) has_failed_ = false;
    if (history.is_saved()) {
        discard();
    } else if (const auto written = write(desk); !written) {
        has_failed_ = true;
        desk.ui.notice = Notice{
            "Save often: edits cannot be kept against a crash. " + engine::to_text(written.error()),
            true};
    }
    remember(desk);
}

void JournalKeeper::remember(const Desk& desk) {
    saved_ = desk.history.saved();
    kept_ = desk.history.now();
    file_ = desk.file;
}

engine::Result<engine::Done> JournalKeeper::write(const Desk& desk) {
    if (!log_ || saved_ != desk.history.saved() || file_ != desk.file) {
        if (const auto begun = begin(desk); !begun) return begun;
    }
    const auto record = writer_->next_record(*desk.history.now(), desk.history.undo_label());
    if (!record) return engine::Done{};
    is_flushed_ = false;
    return log_->append(*record);
}

// The one before goes when the new one has its beginning.
engine::Result<engine::Done> JournalKeeper::begin(const Desk& desk) {
    if (!is_made(folder_)) {
        return engine::Error{engine::ErrorCode::cannot_write, folder_.string(),
                             "this folder cannot be made"};
    }
    auto log = new_log(folder_);
    if (!log) return log.error();
    model::JournalWriter writer(*desk.history.saved(), absolute_text(desk.file));
    auto fresh = std::move(log).value();
    if (auto first = fresh.append(writer.first_record()); !first) {
        std::error_code ignored;
        fs::remove(fresh.path(), ignored);
        return first;
    }
    discard();
    log_ = std::move(fresh);
    writer_ = std::move(writer);
    return engine::Done{};
}

void JournalKeeper::flush() {
    if (is_flushed_ || !log_) return;
    // Where the disk cannot do it the system has the edits all the same.
    static_cast<void>(log_->flush());
    is_flushed_ = true;
}

void JournalKeeper::discard() {
    is_flushed_ = true;
    writer_.reset();
    if (!log_) return;
    std::error_code ignored;
    fs::remove(log_->path(), ignored);
    log_.reset();
}

}  // namespace editor
