#include "editor/left_behind.h"

#include "editor/journal_keeper.h"
#include "editor/open_project.h"

#include <sys/stat.h>

#include <algorithm>
#include <ctime>
#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

// What of the journal can be made again; `is_whole` where that is all of it.
struct ReadJournal {
    model::ReplayedJournal content;
    bool is_whole = true;
};

engine::Result<ReadJournal> read_journal(const fs::path& journal) {
    const auto read = engine::read_records(journal);
    if (!read) return read.error();
    auto content = model::replayed(read->records);
    if (!content) return content.error();
    const bool is_whole = !read->is_cut && content->left_out == 0;
    return ReadJournal{std::move(content).value(), is_whole};
}

std::time_t time_written(const fs::path& file) {
    struct stat about {};
    return ::stat(file.c_str(), &about) == 0 ? about.st_mtime : 0;
}

// "26 Nov 14:05", by the clock here.
std::string time_words(std::time_t time) {
    std::tm parts{};
    char text[32];
    if (::localtime_r(&time, &parts) == nullptr) return {};
    return {text, std::strftime(text, sizeof text, "%d %b %H:%M", &parts)};
}

std::string words_of(const ReadJournal& read, std::time_t time) {
    const auto& journal = read.content;
    const auto& name = journal.now.name;
    std::string words = journal.steps == 1 ? "One edit" : std::to_string(journal.steps) + " edits";
    const auto file = fs::path(journal.file).filename().string();
    words += " to " +
             (!name.empty()  ? name
              : file.empty() ? "a project without a name"
                             : file) +
             ", ";
    words += journal.file.empty() ? "which was never saved," : journal.file + ",";
    words += journal.steps == 1 ? " is in no file yet" : " are in no file yet";
    const auto when = time_words(time);
    words += when.empty() ? "." : " (" + when + ").";
    return read.is_whole ? words : words + " What came after that cannot be read.";
}

// The program ended between a save and taking the journal away.
bool is_in_its_file(const model::ReplayedJournal& journal) {
    if (journal.file.empty()) return false;
    const auto saved = open_project(journal.file);
    return saved && *saved == journal.now;
}

std::vector<fs::path> journals_in(const fs::path& folder) {
    std::vector<std::pair<std::time_t, fs::path>> found;
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        if (at->path().extension() == ".journal")
            found.emplace_back(time_written(at->path()), at->path());
    }
    std::sort(found.begin(), found.end(), std::greater<>());
    std::vector<fs::path> paths;
    for (auto& [time, path] : found) paths.push_back(std::move(path));
    return paths;
}

void remove_file(const fs::path& file) {
    std::error_code ignored;
    fs::remove(file, ignored);
}

// Nobody is asked about it again, and nothing of it is lost.
void put_aside(const fs::path& journal) {
    std::error_code ignored;
    auto kept = fs::path(journal).replace_extension(".kept");
    for (int n = 2; fs::exists(kept, ignored); ++n)
        kept = fs::path(journal).replace_extension("." + std::to_string(n) + ".kept");
    fs::rename(journal, kept, ignored);
}

bool has_nothing(const fs::path& file) {
    std::error_code failure;
    return fs::is_empty(file, failure) && !failure;
}

LeftBehind unreadable(const fs::path& journal, const engine::Error& error) {
    const auto when = time_words(time_written(journal));
    return {.journal = journal,
            .words = "Edits of an earlier run" + (when.empty() ? "" : " (" + when + ")") +
                     " cannot be brought back: " + engine::to_text(error) +
                     ". The file that holds them is kept in " + journal.parent_path().string() +
                     ".",
            .fault = error.code};
}

// Begun by a program that ended before it was a journal.
void remove_unfinished(const fs::path& folder) {
    constexpr std::time_t day = 24 * 60 * 60;
    std::vector<fs::path> unfinished;
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const auto& path = at->path();
        const bool is_one = path.extension() == ".new" && path.stem().extension() == ".journal";
        if (is_one && time_written(path) < std::time(nullptr) - day) unfinished.push_back(path);
    }
    for (const auto& path : unfinished) remove_file(path);
}

// Takes away what tells nothing.
std::optional<LeftBehind> looked_at(const fs::path& path) {
    const auto read = engine::read_records(path);
    if (read && read->records.empty()) {  // no journal, or none yet
        if (has_nothing(path)) remove_file(path);
        return std::nullopt;
    }
    const auto journal = read_journal(path);
    std::error_code gone;
    if (!journal && !fs::exists(path, gone)) return std::nullopt;  // its program has just ended
    if (!journal) return unreadable(path, journal.error());
    const auto& content = journal->content;
    if (content.now != content.saved && !is_in_its_file(content))
        return LeftBehind{path, words_of(*journal, time_written(path))};
    if (journal->is_whole) {
        remove_file(path);
    } else {
        put_aside(path);
    }
    return std::nullopt;
}

}  // namespace

fs::path journal_folder(const fs::path& state_folder) { return state_folder / "journals"; }

std::vector<LeftBehind> left_behind(const fs::path& folder) {
    std::vector<LeftBehind> all;
    remove_unfinished(folder);
    for (const auto& path : journals_in(folder)) {
        if (engine::is_being_written(path)) continue;
        if (auto left = looked_at(path)) all.push_back(*std::move(left));
    }
    return all;
}

void ask_about_left_behind(Desk& desk) {
    if (desk.state_folder.empty()) return;
    auto all = left_behind(journal_folder(desk.state_folder));
    std::reverse(all.begin(), all.end());
    auto& ui = desk.ui;
    for (auto& one : all) {
        if (one.fault) {
            ui.interrupted.push_back(
                Trouble{"Edits of an earlier run cannot be read", std::move(one.words)});
            if (*one.fault == engine::ErrorCode::bad_file) put_aside(one.journal);
            continue;
        }
        ui.interrupted.push_back(RecoveryQuestion{std::move(one.journal), std::move(one.words)});
    }
    if (!is_open(ui.dialog)) close_dialog(desk);  // which brings up the last of them
}

void discard_journal(const fs::path& journal) { remove_file(journal); }

void bring_back(Desk& desk, const fs::path& path) {
    const auto read = read_journal(path);
    if (!read) {
        interrupt_with(desk,
                       Trouble{"The edits cannot be brought back", engine::to_text(read.error())});
        return;
    }
    const auto& journal = read->content;
    replace_project(desk, journal.saved, journal.file);
    desk.history.record("edits brought back", journal.now);
    see_from(desk, engine::ViewFrom::corner);
    desk.ui.notice = Notice{"The edits are back, and in no file yet", false};
    if (!desk.journal) return;
    desk.journal->keep(desk, true);
    // Where they are not safe again, which the notice says, the old journal stays.
    if (!desk.journal->holds(desk) || !desk.journal->flush()) return;
    if (read->is_whole) {
        remove_file(path);
    } else {
        put_aside(path);
    }
    const auto others = left_behind(path.parent_path());
    if (std::ranges::any_of(others, [](const LeftBehind& other) { return !other.fault; }))
        desk.ui.notice->text += "; more was left behind, and is asked about at the next start";
}

}  // namespace editor
