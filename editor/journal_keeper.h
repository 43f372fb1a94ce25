// Keeps the edits since the last save in a file of their own, so that the end of the program or of
// the machine loses at most the one that is being made.
#pragma once

#include "editor/desk.h"
#include "engine/files/record_log.h"
#include "model/project/journal.h"

#include <filesystem>
#include <optional>

namespace editor {

class JournalKeeper {
public:
    // Journals go into the folder, which is made when the first one is begun.
    explicit JournalKeeper(std::filesystem::path folder) : folder_{std::move(folder)} {}
    ~JournalKeeper();
    JournalKeeper(const JournalKeeper&) = delete;
    JournalKeeper& operator=(const JournalKeeper&) = delete;

    // Writes down what has changed since the last call; a project that is saved has no journal. A
    // drag is written when it ends or comes to rest. Where that is not possible the desk's notice
    // says so once, and it is tried again with every edit.
    void keep(Desk& desk, bool is_at_rest);

    // Whether the journal comes to the project as it is now.
    bool holds(const Desk& desk) const;

    // To the disk, where something is not there yet; for when nothing else is to be done. Says
    // whether all of it is there then.
    bool flush();

    // The user has decided: what was kept is taken away. So it is when this goes.
    void discard();

    // The journal of now; empty where there is none.
    std::filesystem::path path() const;

private:
    engine::Result<engine::Done> write(const Desk& desk);
    engine::Result<engine::Done> begin(const Desk& desk);
    bool must_begin(const Desk& desk) const;

    std::filesystem::path folder_;
    std::optional<engine::RecordLog> log_;
    std::optional<model::JournalWriter> writer_;
    Snapshot saved_;  // what the journal begins with
    Snapshot kept_;   // what it comes to
    std::filesystem::path file_;
    bool has_failed_ = false;
    bool is_flushed_ = true;
};

}  // namespace editor
