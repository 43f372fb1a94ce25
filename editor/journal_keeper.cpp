#include "editor/journal_keeper.h"

#include "editor/state_folder.h"

#include <unistd.h>

#include <cstdint>
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

constexpr const char* being_made = ".new";

// The first name that is free: programs that run beside this one, or ran before it, have others.
fs::path free_name(const fs::path& folder) {
    constexpr int most_names = 1000;
    fs::path path;
    std::error_code ignored;
    for (int n = 1; n <= most_names; ++n) {
        const auto number = std::to_string(::getpid()) + "-" + std::to_string(n);
        path = folder / ("edits-" + number + ".journal");
        if (!fs::exists(path, ignored) && !fs::exists(fs::path(path) += being_made, ignored)) break;
    }
    return path;
}

void remove_file(const fs::path& file) {
    std::error_code ignored;
    fs::remove(file, ignored);
}

// Longer ones begin anew: reading them again must not take long.
constexpr std::uint64_t most_journal_bytes = std::uint64_t{32} << 20U;

}  // namespace

JournalKeeper::~JournalKeeper() { discard(); }

fs::path JournalKeeper::path() const { return log_ ? log_->path() : fs::path{}; }

bool JournalKeeper::holds(const Desk& desk) const {
    return log_ && !has_failed_ && kept_ == desk.history.now() && saved_ == desk.history.saved() &&
           file_ == desk.file;
}

void JournalKeeper::keep(Desk& desk, bool is_at_rest) {
    const auto& history = desk.history;
    if (history.is_merging() && !is_at_rest) return;
    if (kept_ == history.now() && saved_ == history.saved() && file_ == desk.file) return;
    if (history.is_saved()) {
        discard();
        has_failed_ = false;
    } else {
        const auto written = write(desk);
        if (!written && !has_failed_) {
            desk.ui.notice =
                Notice{"Save often: edits cannot be kept against a crash. " +
                           engine::to_text(written.error()) +
                           "; see to room on the disk, or to the rights of that folder",
                       true};
        }
        has_failed_ = !written;
    }
    saved_ = history.saved();
    kept_ = history.now();
    file_ = desk.file;
}

bool JournalKeeper::must_begin(const Desk& desk) const {
    return !log_ || has_failed_ || saved_ != desk.history.saved() || file_ != desk.file ||
           log_->size() > most_journal_bytes;
}

engine::Result<engine::Done> JournalKeeper::write(const Desk& desk) {
    if (must_begin(desk)) return begin(desk);
    const auto record = writer_->next_record(*desk.history.now(), desk.history.undo_label());
    if (!record) return engine::Done{};
    is_flushed_ = false;
    return log_->append(*record);
}

// The one before goes when the new one holds all.
engine::Result<engine::Done> JournalKeeper::begin(const Desk& desk) {
    if (!is_made(folder_)) {
        return engine::Error{engine::ErrorCode::cannot_write, folder_.string(),
                             "this folder cannot be made"};
    }
    // It bears the name of a journal when it is one: locked, and with all that is to be in it.
    // Other programs that look for journals leave it alone until then, and from then on.
    const auto name = free_name(folder_);
    auto made = engine::RecordLog::create(fs::path(name) += being_made);
    if (!made) return made.error();
    auto log = std::move(made).value();
    model::JournalWriter writer(*desk.history.saved(), absolute_text(desk.file));
    const auto step = writer.next_record(*desk.history.now(), desk.history.undo_label());
    auto written = log.append(writer.first_record());
    if (written && step) written = log.append(*step);
    if (written && log_) written = log.flush();
    if (written) written = log.rename_to(name);
    if (!written) {
        remove_file(log.path());
        return written;
    }
    discard();
    log_ = std::move(log);
    writer_ = std::move(writer);
    is_flushed_ = false;
    return engine::Done{};
}

bool JournalKeeper::flush() {
    if (is_flushed_ || !log_) return true;
    is_flushed_ = log_->flush().has_value();
    return is_flushed_;
}

void JournalKeeper::discard() {
    is_flushed_ = true;
    writer_.reset();
    if (log_) remove_file(log_->path());
    log_.reset();
}

}  // namespace editor
