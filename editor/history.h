// Undo and redo as kept projects. A project is a few hundred kilobytes at most, so a copy costs
// less than the bugs of hand-written inverse edits.
#pragma once

#include "model/project/project.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

using Snapshot = std::shared_ptr<const model::Project>;
using Revision = std::uint64_t;  // of one state; undo brings back the number it had

class History {
public:
    static constexpr std::size_t most_steps = 300;

    // Revisions go on from `last`, so that they stay unique when a project takes another's place.
    explicit History(model::Project first, Revision last = 0);

    const Snapshot& now() const { return steps_[at_].project; }
    // The state before the last step; where there is none, that of now.
    const Snapshot& before() const { return steps_[at_ > 0 ? at_ - 1 : at_].project; }
    Revision revision() const { return steps_[at_].revision; }
    Revision newest_revision() const { return last_revision_; }
    Revision revision_before() const { return steps_[at_ > 0 ? at_ - 1 : at_].revision; }
    bool can_undo() const { return at_ > 0; }
    bool can_redo() const { return at_ + 1 < steps_.size(); }
    bool is_saved() const { return now() == saved_ || *now() == *saved_; }
    const Snapshot& saved() const { return saved_; }
    bool is_merging() const { return !merge_key_.empty(); }

    // What the last step did, and what redo would do again; empty where there is none.
    const std::string& undo_label() const { return steps_[at_].label; }
    std::string redo_label() const { return can_redo() ? steps_[at_ + 1].label : std::string(); }

    // A non-empty merge key replaces the last step while the key stays the same, so that one drag
    // is one step; a drag that comes back to where it began leaves no step, and what could be
    // redone before it can be redone again.
    void record(std::string label, model::Project next, const std::string& merge_key = {});
    void end_merge();

    // Whether undo and redo can come to the state of that number.
    bool holds(Revision revision) const;

    void undo();
    void redo();
    void mark_saved();
    // What is in the file is that, which need not be a state of this history.
    void mark_saved_as(model::Project saved);

    // Puts all states in other words that mean the same, where `other` gives such; their revisions
    // stay. What is saved is to be marked anew.
    void restate(const std::function<std::optional<model::Project>(const model::Project&)>& other);

private:
    struct Step {
        std::string label;
        Snapshot project;
        Revision revision = 0;
    };

    void push(std::string label, model::Project project);

    std::vector<Step> steps_;
    std::size_t at_ = 0;
    Revision last_revision_ = 0;
    std::string merge_key_;
    std::vector<Step> cut_off_;  // by the drag of merge_key_: what could be redone before it
    Snapshot saved_;
};

}  // namespace editor
