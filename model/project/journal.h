// What happened to a project since it was last saved, as texts of which each stands on those before
// it: written one by one while the user works, and read again after a crash.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>

namespace model {

// Gives the records of one journal in their order.
class JournalWriter {
public:
    // The first record: the project as it stands in its file, and what file that is ("" for none).
    JournalWriter(const Project& saved, std::string file);
    ~JournalWriter();
    JournalWriter(JournalWriter&&) noexcept;
    JournalWriter& operator=(JournalWriter&&) noexcept;

    const std::string& first_record() const { return first_; }

    // What makes the project of the last record into `next`: a JSON patch (RFC 6902), or the whole
    // of it where that is shorter. None where nothing has changed.
    std::optional<std::string> next_record(const Project& next, const std::string& label);

private:
    std::unique_ptr<nlohmann::json> last_;
    std::string first_;
};

struct ReplayedJournal {
    std::string file;        // as the writer was told
    Project saved;           // as it stood in the file
    Project now;             // after the last step that could be made again
    std::size_t steps = 0;   // that were made again
    std::string last_label;  // of the last of them
    std::size_t left_out = 0;
};

// Makes the steps again; where what they come to is no project, up to the first that cannot be made
// or comes to none. Errors: bad_file
// where the first record is none of a journal or holds no project; newer_version for that of a
// later program.
engine::Result<ReplayedJournal> replayed(std::span<const std::string> records);

}  // namespace model
